import * as vscode from 'vscode';
import type { HeavyQuestion, SkinReply } from '../engine/index.ts';
import type { HeavyWork } from './heavy-work.ts';

/** Skins that are kept: undo and the other hand find them again. */
const most = 24;

/** Skins worked out by workers, each once; a newer question about the same panel ends the older one. */
export class Skins {
  readonly #work: HeavyWork;
  readonly #known = new Map<string, Promise<SkinReply | undefined>>();
  readonly #running = new Map<string, { key: string; source: vscode.CancellationTokenSource }>();

  constructor(work: HeavyWork) {
    this.#work = work;
  }

  /** The skin asked for; undefined where something newer was asked before it was there. */
  of(question: HeavyQuestion): Promise<SkinReply | undefined> {
    const { key, about } = question;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    this.#running.get(about)?.source.cancel();
    const source = new vscode.CancellationTokenSource();
    this.#running.set(about, { key, source });
    const reply = this.#ask(question, source).finally(() => {
      if (this.#running.get(about)?.source === source) this.#running.delete(about);
    });
    this.#known.set(key, reply);
    for (const old of this.#known.keys()) {
      if (this.#known.size <= most) break;
      this.#known.delete(old);
    }
    return reply;
  }

  async #ask(
    question: HeavyQuestion,
    { token }: vscode.CancellationTokenSource,
  ): Promise<SkinReply | undefined> {
    try {
      const reply = await this.#work({ kind: 'skin', question }, { token });
      if (reply === undefined) this.#known.delete(question.key);
      return reply;
    } catch (fault) {
      this.#known.delete(question.key);
      throw fault;
    }
  }
}
