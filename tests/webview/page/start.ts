import type { FromWebview, ToWebview } from '../../../extension/protocol/messages.ts';
import { FakeHost } from './fake-host.ts';

// Stands in for VS Code: the page's own script finds `acquireVsCodeApi` and a host behind it.
const wanted = new URLSearchParams(location.search);
const states = ['ready', 'empty', 'read-only', 'conflicted', 'unreadable'] as const;
const state = states.find((one) => one === wanted.get('state')) ?? 'ready';
const host = new FakeHost(
  (message: ToWebview) => {
    window.postMessage(JSON.stringify(message));
  },
  Number(wanted.get('rows') ?? '60'),
  state,
);
const theme = wanted.get('theme') ?? 'dark';
const contrast = theme.startsWith('hc') ? ['vscode-high-contrast'] : [];
document.body.classList.add(...contrast, `theme-${theme}`);

let kept: unknown;
Object.assign(window, {
  fakeHost: host,
  acquireVsCodeApi: () => ({
    postMessage: (message: FromWebview) => {
      const copy = structuredClone(message);
      setTimeout(() => {
        host.receive(copy);
      });
    },
    getState: () => kept,
    setState: (next: unknown) => {
      kept = next;
    },
  }),
});
