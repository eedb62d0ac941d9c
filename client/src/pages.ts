/** The scheme under which the page of a rule is opened: `scant-rule:/low-contrast.md`. */
export const RULE_PAGES = 'scant-rule';

/** The rule of such an address. */
export function ruleOf(path: string): string {
  return path.replace(/^\//, '').replace(/\.md$/, '');
}
