/** The page of a rule: why it matters, an example of each kind, the usual mends. Markdown, also the handbook's. */
import type { Rule, Severity } from './rule.ts';

/** A Markdown page that stands alone. */
export function explanationOf(rule: Rule): string {
  return [
    `# ${rule.title} (\`${rule.id}\`)`,
    SAYS[rule.severity],
    rule.why,
    '## An example',
    fenced(rule.bad),
    'Mended:',
    fenced(rule.good),
    '## The usual mends',
    rule.mends.map((mend) => `- ${mend}`).join('\n'),
    `On purpose? \`// allow ${rule.id}\` at the end of the line silences it there.`,
  ].join('\n\n') + '\n';
}

const SAYS: Readonly<Record<Severity, string>> = {
  error: 'An error: nothing is written until it is mended.',
  warning: 'A warning: outputs are written all the same.',
  hint: 'A hint: outputs are written all the same.',
};

function fenced(text: string): string {
  return `\`\`\`quilt\n${text.trimEnd()}\n\`\`\``;
}
