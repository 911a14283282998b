import { afterEach, describe, expect, test } from 'vitest';
import { dressButtons, ownButton } from '../../webview/form.ts';

afterEach(() => {
  document.body.replaceChildren();
});

describe('ownButton', () => {
  test('works before and after it is dressed', () => {
    let presses = 0;
    const made = ownButton('Compare stocks', () => {
      presses += 1;
    });
    document.body.append(made);
    made.querySelector('button')?.click();
    customElements.define('vscode-button', class extends HTMLElement {});
    dressButtons(document);
    expect(made.querySelector('button')).toBeNull();
    const dressed = made.querySelector<HTMLElement>('vscode-button');
    expect(dressed?.textContent).toBe('Compare stocks');
    dressed?.click();
    expect(presses).toBe(2);
  });
});
