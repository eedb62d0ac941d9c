/** The tool's version, from the one place where it stands. */
import { version } from '../../../package.json';

export const VERSION: string = version;
