import type { FromWebview, ToWebview } from '../extension/protocol/messages.ts';
import { App } from './app.ts';
import { dressButtons } from './form.ts';

declare function acquireVsCodeApi(): {
  postMessage(message: FromWebview): void;
  getState(): unknown;
  setState(state: unknown): void;
};

const host = acquireVsCodeApi();

function fault(text: string): void {
  host.postMessage({ type: 'fault', text });
}

window.addEventListener('error', (event) => {
  fault(`${event.message} at ${event.filename}:${String(event.lineno)}`);
});
window.addEventListener('unhandledrejection', (event) => {
  fault(`Unhandled: ${String(event.reason)}`);
});
document.addEventListener('securitypolicyviolation', (event) => {
  fault(`Content security policy: ${event.violatedDirective} ${event.blockedURI}`);
});

const app = new App({
  post: (message) => {
    host.postMessage(message);
  },
  kept: host.getState(),
  keep: (state) => {
    host.setState(state);
  },
});

// The host sends texts: VS Code would otherwise walk through each object that it passes on.
window.addEventListener('message', ({ data }: MessageEvent<string>) => {
  app.receive(JSON.parse(data) as ToWebview);
});
document.querySelector('#app')?.replaceChildren(app.root);
host.postMessage({ type: 'ready' });

// The UI kit is dress, not function: it comes after the grid has been painted.
function loadKit(): void {
  const url = document.body.dataset['uiKit'];
  if (url === undefined || url === '') return;
  const script = document.createElement('script');
  const nonce = document.querySelector('meta[property="csp-nonce"]')?.getAttribute('content');
  script.nonce = nonce ?? '';
  script.src = url;
  script.addEventListener('load', () => {
    dressButtons(document);
  });
  document.body.append(script);
}

setTimeout(() => {
  requestAnimationFrame(() => {
    setTimeout(loadKit);
  });
}, 300);
