import * as vscode from 'vscode';

/** The empty page: its style and its script come from the extension's own files, pictures from the workspace, and nothing from elsewhere. */
export function shell(webview: vscode.Webview, dist: vscode.Uri): string {
  const nonce = newNonce();
  const file = (name: string) => webview.asWebviewUri(vscode.Uri.joinPath(dist, name)).toString();
  const policy = `default-src 'none'; img-src ${webview.cspSource}; style-src ${webview.cspSource}; script-src 'nonce-${nonce}'; base-uri 'none'; form-action 'none'`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Comparison</title>
<link rel="stylesheet" href="${file('page.css')}">
</head>
<body>
<main id="page" tabindex="-1"></main>
<script nonce="${nonce}" src="${file('page.js')}"></script>
</body>
</html>`;
}

function newNonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
