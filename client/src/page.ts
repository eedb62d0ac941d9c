/** The preview's page: its frame, which scripts and styles it may load, and nothing else. */
import { Uri, type Webview } from 'vscode';
import type { Background } from './preview/messages.ts';

/** Only this folder's files reach the page; only the script with this call's nonce runs in it. */
export function pageOf(webview: Webview, dist: Uri, background: Background): string {
  const nonce = crypto.randomUUID().replaceAll('-', '');
  const file = (name: string): string => webview.asWebviewUri(Uri.joinPath(dist, name)).toString();
  return `<!DOCTYPE html>
<html lang="en" data-background="${background}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src ${webview.cspSource}; img-src data:; script-src 'nonce-${nonce}'; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${file('preview.css')}">
<title>Preview</title>
</head>
<body>
<header>
<h1 class="unseen">Preview</h1>
<div id="bar" role="toolbar" aria-label="What is shown"></div>
</header>
<main id="main">
<div id="stage" tabindex="0" role="application" aria-label="Preview" aria-describedby="help">
<div id="sheet"></div>
</div>
<p id="help" hidden>Arrow keys move the picture, plus and minus zoom, 0 shows all of it, Page Up and Page Down go through steps. A click on a patch shows its text.</p>
<p id="note" role="status"></p>
<p id="badge" role="status" hidden></p>
<div id="tools" role="toolbar" aria-label="How it is shown"></div>
</main>
<aside id="words" tabindex="0" aria-label="About the picture" aria-live="polite" hidden></aside>
<script nonce="${nonce}" src="${file('preview.js')}"></script>
</body>
</html>`;
}
