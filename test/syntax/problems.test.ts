import { describe } from 'vitest';
import { parse } from '../../server/src/syntax/parse.ts';
import { documentOf } from '../../server/src/text/document.ts';
import { checkCases } from './cases.ts';
import { marked } from './marked.ts';

describe('problems', () => {
  checkCases('problems.txt', (given) => {
    const document = documentOf('case', given);
    return marked(document, parse(document).problems);
  });
});
