/** Wrong usage, help and version: what a first encounter with the command looks like. */
import { describe, expect, it } from 'vitest';
import { bench } from './command-line.ts';

const COMMANDS = ['check', 'build', 'format', 'explain', 'new', 'lsp', 'completion'];

describe('help', () => {
  it('lists the commands', async () => {
    const { code, out, err } = await bench().scant(['--help']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    for (const command of COMMANDS) expect(out).toContain(`scant ${command}`);
    expect((await bench().scant(['help'])).out).toBe(out);
  });
  it.each(COMMANDS)('%s explains itself, whatever else is said', async (command) => {
    const { code, out } = await bench().scant([command, 'no.quilt', '--help']);
    expect(code).toBe(0);
    expect(out).toMatch(new RegExp(`^scant ${command} `));
    expect((await bench().scant(['help', command])).out).toBe(out);
    for (const line of out.split('\n').slice(1)) expect(line.length).toBeLessThan(100);
  });
  it('tells the version', async () => {
    expect(await bench().scant(['--version'])).toMatchObject({ code: 0, out: expect.stringMatching(/^scant \d+\.\d+\.\d+\n$/) as string });
  });
});

describe('wrong usage exits with 2, on the error output', () => {
  it.each([
    [[], 'scant: name a command'],
    [['chekc', 'a.quilt'], 'scant: there is no command "chekc"; did you mean check?'],
    [['check'], 'scant check: name a file or a folder'],
    [['build'], 'scant build: name a file or a folder'],
    [['format'], 'scant format: name a file or a folder'],
    [['check', 'a.quilt', '--fromat', 'json'], 'scant check: unknown option --fromat; did you mean --format?'],
    [['check', 'a.quilt', '--format', 'xml'], 'scant check: format "xml" is not known: use text, json, sarif, github'],
    [['check', 'a.quilt', '--format'], "scant check: Option '--format <value>' argument missing"],
    [['build', 'a.quilt', '--only', 'quitl'], 'scant build: --only "quitl" is not known: use quilt, blocks, cutting, pattern, steps, booklet, templates'],
    [['build', 'a.quilt', '--only', ','], 'scant build: --only needs a kind: quilt, blocks, cutting, pattern, steps, booklet, templates'],
    [['explain', 'gpa'], 'scant explain: there is no rule "gpa"; did you mean gap? (scant explain lists them)'],
    [['explain', 'gap', 'overlap'], 'scant explain: name one rule'],
    [['new'], 'scant new: name one new pattern'],
    [['lsp'], 'scant lsp: say --stdio'],
    [['completion'], 'scant completion: name a shell: bash, zsh, fish'],
    [['completion', 'bsh'], 'scant completion: shell "bsh" is not known; did you mean bash?: use bash, zsh, fish'],
    [['help', 'chekc'], 'scant: there is no command "chekc"; did you mean check?'],
  ])('%j', async (argv, message) => {
    const { code, out, err } = await bench().scant(argv);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toBe(`${message}\nTry \`${message.slice(0, message.indexOf(':'))} --help\`.\n`);
  });
});
