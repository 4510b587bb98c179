/** The frame of every page: one file that needs nothing else, no network and no script. */
import { escapeHtml } from '../escape.ts';
import { STYLE } from './html-style.ts';

/** A whole document. @param title - of the window; escaped here @param body - HTML, escaped already */
export const htmlPage = (title: string, body: readonly string[]): string => `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escapeHtml(title)}</title>
<style>${STYLE}</style>
</head>
<body>
<main>
${body.join('\n')}
</main>
</body>
</html>
`;
