import type { BuildOptions } from 'esbuild';

export function grammarModule(source: string): string;
export const textFiles: Required<Pick<BuildOptions, 'loader' | 'plugins'>>;
