import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { findBrowser } from '../../../.config/start/browser.js';

/** As much of the browser driver as is used here; it is installed only where the workbench is run. */
export interface Locator {
  click(options?: {
    readonly button?: 'left' | 'right';
    readonly timeout?: number;
    readonly modifiers?: readonly ('Control' | 'Shift')[];
  }): Promise<void>;
  dblclick(): Promise<void>;
  fill(text: string, options?: { readonly timeout?: number }): Promise<void>;
  press(key: string): Promise<void>;
  focus(): Promise<void>;
  count(): Promise<number>;
  textContent(): Promise<string | null>;
  innerText(): Promise<string>;
  allInnerTexts(): Promise<readonly string[]>;
  inputValue(): Promise<string>;
  getAttribute(name: string): Promise<string | null>;
  isVisible(): Promise<boolean>;
  waitFor(options?: {
    readonly state?: 'attached' | 'detached' | 'visible' | 'hidden';
    readonly timeout?: number;
  }): Promise<void>;
  first(): Locator;
  last(): Locator;
  nth(index: number): Locator;
  filter(options: { readonly hasText?: string | RegExp }): Locator;
  locator(selector: string, options?: { readonly hasText?: string | RegExp }): Locator;
  evaluate<Answer>(run: (element: HTMLElement) => Answer): Promise<Answer>;
  screenshot(options?: { readonly path?: string }): Promise<Uint8Array>;
}

export interface Frame {
  url(): string;
  locator(selector: string, options?: { readonly hasText?: string | RegExp }): Locator;
  evaluate<Answer, Given = undefined>(
    run: ((given: Given) => Answer | Promise<Answer>) | string,
    given?: Given,
  ): Promise<Answer>;
  isDetached(): boolean;
}

export interface Keyboard {
  press(key: string, options?: { readonly delay?: number }): Promise<void>;
  type(text: string, options?: { readonly delay?: number }): Promise<void>;
  insertText(text: string): Promise<void>;
}

export interface Page extends Frame {
  readonly keyboard: Keyboard;
  goto(url: string): Promise<unknown>;
  frames(): readonly Frame[];
  screenshot(options?: { readonly path?: string }): Promise<Uint8Array>;
  waitForTimeout(milliseconds: number): Promise<void>;
  setViewportSize(size: Size): Promise<void>;
  exposeFunction(
    name: string,
    run: (kind: string, words: readonly unknown[]) => void,
  ): Promise<void>;
  on(event: 'console', hear: (message: ConsoleMessage) => void): void;
  on(event: 'pageerror', hear: (fault: Error) => void): void;
}

export interface ConsoleMessage {
  type(): string;
  text(): string;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

interface Context {
  newPage(): Promise<Page>;
}

export interface Browser {
  newContext(options: {
    readonly viewport: Size;
    readonly permissions?: readonly string[];
  }): Promise<Context>;
  close(): Promise<void>;
}

interface Driver {
  readonly chromium: {
    launch(options: {
      readonly executablePath: string;
      readonly args: readonly string[];
    }): Promise<Browser>;
  };
}

const hosts = fileURLToPath(new URL('../hosts/', import.meta.url));

function fromHosts(name: string): unknown {
  return createRequire(join(hosts, 'package.json'))(name);
}

export async function launchBrowser(): Promise<Browser> {
  const executablePath = findBrowser();
  if (executablePath === undefined)
    throw new Error('There is no browser on this machine; npm test installs one.');
  const { chromium } = fromHosts('playwright-core') as Driver;
  const args = [
    // A container has neither Chromium's sandbox nor room in /dev/shm.
    '--no-sandbox',
    '--disable-dev-shm-usage',
    // As in VS Code itself, where webviews are of a site and a process of their own.
    '--isolate-origins=http://[*.]lab.localhost',
  ];
  return chromium.launch({ executablePath, args });
}

/** File of the accessibility checker, to be run inside a frame. */
export function axeFile(): string {
  return join(hosts, 'node_modules/axe-core/axe.min.js');
}
