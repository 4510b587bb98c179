export declare const GUIDES: readonly string[];
export declare function commandsOf(page: string): string[];
export declare function runGuide(
  root: string,
  guide: string,
  options: { folder: string; bin: string; units: string },
): Promise<{ cwd: string; times: { command: string; seconds: number }[] }>;
