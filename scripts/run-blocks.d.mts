export function pagesOf(root: string): string[];
export function blocksOf(text: string): string[];
