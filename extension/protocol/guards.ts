import type { FromWebview } from './messages.ts';

const types: readonly FromWebview['type'][] = [
  'ready',
  'ask',
  'cursor',
  'selection',
  'step-knob',
  'pin',
  'command',
  'save',
  'save-picture',
  'fault',
];

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

/** True when a message from the page has the shape of one of ours; anything else is dropped. */
export function isFromWebview(message: unknown): message is FromWebview {
  if (!isRecord(message)) return false;
  const { type } = message;
  if (typeof type !== 'string' || !types.some((known) => known === type)) return false;
  if (type === 'ask') {
    const { request, question } = message;
    return typeof request === 'number' && isRecord(question) && typeof question['ask'] === 'string';
  }
  return true;
}
