import type { ToWebview } from '../extension/protocol/messages.ts';
import { afterFrame } from './after-frame.ts';

export type Patch = Extract<ToWebview, { readonly type: 'patch' }>;

/** Marks when a patch was written and when the frame that people see it in was out. */
export function markPainted({ part, cause }: Patch): void {
  const [applied, painted] =
    part === 'rest' ? ['rest-applied', 'rest-painted'] : ['applied', 'painted'];
  performance.mark(`panelwright:${applied}`, { detail: cause });
  afterFrame(() => {
    performance.mark(`panelwright:${painted}`, { detail: cause });
  });
}
