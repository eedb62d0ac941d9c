/** The first pattern of the language's page (section 1), word for word. */
import { readFileSync } from 'node:fs';

export const FIRST_PATTERN = readFileSync(new URL('../cases/syntax/harbour-mail.quilt', import.meta.url), 'utf8');
