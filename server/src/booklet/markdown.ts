/** Small pieces of Markdown. */

/** A text of the author's as plain text on one line: nothing in it is read as markup. */
export function plain(text: string): string {
  return text.replace(/[\r\n]+/g, ' ').replace(/[\\`*_[\]<>#|~&]/g, (mark) => `\\${mark}`);
}

/** An author's Markdown, in which HTML is text: what is printed, looked at and mailed runs nothing. */
export function authored(text: string): string {
  return text.replace(/<(?!https?:\/\/[^\s<>]+>)(?=[a-z/!?])/gi, '\\<');
}

export function table(head: readonly string[], rows: readonly (readonly string[])[]): readonly string[] {
  return [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`);
}

/** Sections of lines, a blank line between them; empty ones are left out. */
export function sections(parts: readonly (readonly string[])[]): string {
  return `${parts.filter((lines) => lines.length > 0).map((lines) => lines.join('\n')).join('\n\n')}\n`;
}
