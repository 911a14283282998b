import * as vscode from 'vscode';

const nonceAlphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789';

/** Letters nobody can guess, for the page's content security policy. */
export function newNonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(24));
  return Array.from(bytes, (byte) => nonceAlphabet[byte % nonceAlphabet.length]).join('');
}

function attribute(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;');
}

/** The page of a grid: one script, one style sheet, and a policy that allows nothing else. */
export function gridPage(webview: vscode.Webview, extensionUri: vscode.Uri): string {
  const nonce = newNonce();
  const asset = (name: string): string =>
    attribute(webview.asWebviewUri(vscode.Uri.joinPath(extensionUri, 'dist', name)).toString());
  const policy = [
    "default-src 'none'",
    `script-src 'nonce-${nonce}'`,
    `style-src ${webview.cspSource} 'nonce-${nonce}'`,
    `font-src ${webview.cspSource}`,
    `img-src ${webview.cspSource} data:`,
    "form-action 'none'",
    "base-uri 'none'",
  ].join('; ');
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${attribute(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta property="csp-nonce" content="${nonce}">
<title>Panelwright</title>
<link rel="stylesheet" href="${asset('webview.css')}">
</head>
<body data-ui-kit="${asset('ui-kit.js')}">
<div id="app"></div>
<script nonce="${nonce}" src="${asset('webview.js')}"></script>
</body>
</html>`;
}
