/** booklet.html: it stands by itself, runs nothing, says what the PDF says; and what an author writes stays text. */
import { describe, expect, test } from 'vitest';
import { bookOf } from '../../server/src/booklet/book/build.ts';
import { fontFiles } from '../../server/src/disk/fonts.ts';
import { bookletHtml } from '../../server/src/print/booklet-html.ts';
import { bookletPdf } from '../../server/src/print/booklet-pdf.ts';
import type { Snapshot } from '../../server/src/snapshot.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { printed } from './patterns.ts';
import { readPdf, textOf } from './read-pdf.ts';

function bookIn(snapshot: Snapshot): ReturnType<typeof bookOf> {
  const quilts = snapshot.quilts.map((quilt) => quilt.settled);
  const [quilt] = quilts;
  if (!quilt) throw new Error('no quilt');
  return bookOf({ pattern: snapshot.pattern, quilts }, quilt);
}

/** The words that are seen, drawings left out. */
function wordsOf(html: string): readonly string[] {
  const text = html
    .replace(/<head>[\s\S]*?<\/head>|<svg[\s\S]*?<\/svg>|<nav[\s\S]*?<\/nav>/g, ' ')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&#39;/g, "'")
    .replace(/&amp;/g, '&');
  return text.split(/\s+/).filter((word) => word !== '' && word !== '•');
}

function countsOf(words: readonly string[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1);
  return counts;
}

describe.each(printed())('$name', ({ snapshot }) => {
  const book = bookIn(snapshot);
  const html = bookletHtml(book);

  test('nothing in it runs or is loaded', () => {
    expect(html).not.toMatch(/<(script|iframe|object|embed|link|img|form|base)\b/i);
    expect(html).not.toMatch(/\son\w+\s*=/i);
    expect([...html.matchAll(/\b(?:href|src|xlink:href|action)="([^"]*)"/g)].map(([, to]) => to).filter((to) => !to?.startsWith('#'))).toEqual([]);
    expect(html).not.toMatch(/url\(|@import/);
  });

  test('every id stands once, and every link leads to one', () => {
    const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const wanted = [...html.matchAll(/(?:href|aria-labelledby)="#?([^"]*)"/g)].map(([, id]) => id);
    expect(wanted.filter((id) => !ids.includes(id))).toEqual([]);
  });

  test('every element is closed in its order', () => {
    const open: string[] = [];
    const faults: string[] = [];
    for (const [, close, tag = '', rest = ''] of html.replace(/<!doctype html>/, '').matchAll(/<(\/?)([a-z][\w-]*)((?:"[^"]*"|[^">])*)>/gi)) {
      if (close === '/') {
        if (open.pop() !== tag) faults.push(tag);
      } else if (!rest.endsWith('/') && tag !== 'meta' && tag !== 'br') open.push(tag);
    }
    expect({ faults, open }).toEqual({ faults: [], open: [] });
  });

  test('it has the words of the PDF', async () => {
    const there = countsOf(textOf(await readPdf(bookletPdf(book, fontFiles()))).split(/\s+/));
    const missing = [...countsOf(wordsOf(html))].filter(([word, count]) => (there.get(word) ?? 0) < count);
    expect(missing).toEqual([]);
  });

  test('the same text twice', () => {
    expect(bookletHtml(bookIn(snapshot))).toBe(html);
  });
});

describe('what an author writes', () => {
  const snapshot = snapshotOfText(`pattern "</title><script>alert(1)</script>" {
  by "<b onclick=x>&amp; Co"
  about """<img src=x onerror=alert(1)> <script>a()</script>

[here](javascript:alert(1)) and [there](https://example.org/?a=1&b=2) ![a picture](https://example.org/a.png)

<div onmouseover="x">block</div>"""
}
fabric ink #22345c "\\"><svg onload=x>"
fabric sand #eadfc8 "(paren) \\\\ end"
block Four 6" {
  ink sand
  sand ink
}
quilt {
  straight 2 by 2
  place { Four }
  quilting "<i>curl</i> & *swirl*"
}
steps after Four { "Trim <u>well</u>, {Four.count} times.\\n" }
`);
  const book = bookIn(snapshot);

  test('is text in the page', () => {
    const html = bookletHtml(book);
    expect(snapshot.problems.filter(({ rule }) => rule === 'syntax')).toEqual([]);
    expect(html).not.toMatch(/<(script|img|b |u>|i>|div onm|svg onload)/i);
    expect(html).not.toMatch(/href="(?!#)/);
    expect(html).toContain('&lt;img src=x onerror=alert(1)&gt;');
    expect(html).toContain('&quot;&gt;&lt;svg onload=x&gt;');
    expect(html).toContain('there (https://example.org/?a=1&amp;b=2)');
    expect(html).toContain('a picture');
  });

  test('is text in the PDF, which holds no action but jumps within', async () => {
    const bytes = bookletPdf(book, fontFiles());
    const read = await readPdf(bytes);
    expect(read.title).toBe('</title><script>alert(1)</script>');
    const text = textOf(read);
    expect(text).toContain('<script>a()</script>');
    expect(text).toContain('"><svg onload=x>');
    expect(text.replace(/\s+/g, ' ')).toContain('Trim <u>well</u>, 4 times.');
    expect(Buffer.from(bytes).toString('latin1')).not.toMatch(/\/(JavaScript|JS|URI|Launch|OpenAction)\b/);
  });
});
