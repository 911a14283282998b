import type { MovableView } from '../../extension/protocol/panel-view.ts';
import type { Fit } from './fit.ts';

export interface MovingHooks {
  /** Puts a row elsewhere, in mm; resolves to whether it was taken. */
  readonly move: (row: string, place: Place) => Promise<boolean>;
  readonly say: (text: string) => void;
}

/** What of a picture can be moved, and how. */
export interface Movables {
  /** Rows that marks stand for, by `part/mid_ring`, in words. */
  readonly rows: Readonly<Record<string, string>>;
  /** Left out where nothing can be moved. */
  readonly movables?: readonly MovableView[];
  /** Drags go in steps of this, in mm. */
  readonly step?: number;
  /** True where x runs to the left. */
  readonly mirrored?: boolean;
}

interface Place {
  readonly x: number;
  readonly y: number;
}

/** Keys pressed in a row are one gesture, which ends when they rest. */
const restMs = 500;
/** A press that moves less than this is a click. */
const slackPx = 3;
const many = 8;

const arrows: Readonly<Record<string, readonly [x: number, y: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Lets rings and holes be dragged, or moved with the arrows, in steps; the picture follows at once. */
export class Moving {
  /** True while the click that ends a drag goes round. */
  justMoved = false;
  readonly #root: SVGElement;
  readonly #hooks: MovingHooks;
  #view: Movables | undefined;
  #fit: Fit | undefined;
  #pending: { readonly movable: MovableView; readonly place: Place } | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(root: SVGElement, hooks: MovingHooks) {
    this.#root = root;
    this.#hooks = hooks;
    root.addEventListener('pointerdown', (event) => {
      this.#press(event);
    });
    root.addEventListener('focusout', () => {
      this.settle();
    });
  }

  shown(view: Movables, fit: Fit): void {
    this.#view = view;
    this.#fit = fit;
    // What is being moved with keys goes on from where it is.
    const { movable, place } = this.#pending ?? {};
    if (movable === undefined || place === undefined) return;
    const now = view.movables?.find(({ row }) => row === movable.row);
    this.#pending = now === undefined ? undefined : { movable: now, place };
  }

  /** Moves the focused row by an arrow; false for another key. */
  key(event: KeyboardEvent): boolean {
    const arrow = arrows[event.key];
    const movable = this.#movableAt(event.target);
    if (arrow === undefined || movable === undefined || this.#view === undefined) return false;
    if (movable.held !== '') {
      this.#hooks.say(movable.held);
      return true;
    }
    const { step = 1, mirrored = false } = this.#view;
    const by = step * (event.shiftKey ? many : 1);
    const from = this.#pending?.movable.row === movable.row ? this.#pending.place : movable;
    const place = {
      x: from.x + arrow[0] * by * (mirrored ? -1 : 1),
      y: from.y + arrow[1] * by,
    };
    this.#pending = { movable, place };
    this.#shift(movable, place);
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      this.settle();
    }, restMs);
    return true;
  }

  settle(): void {
    clearTimeout(this.#timer);
    const pending = this.#pending;
    this.#pending = undefined;
    if (pending !== undefined) void this.#send(pending.movable, pending.place);
  }

  #movableAt(target: EventTarget | null): MovableView | undefined {
    const group = target instanceof Element ? target.closest('[data-row]') : null;
    const [row, owner] = [group?.getAttribute('data-row'), group?.getAttribute('data-owner')];
    const movables = this.#view?.movables ?? [];
    return movables.find((one) => one.row === row) ?? movables.find((one) => one.row === owner);
  }

  #press(event: PointerEvent): void {
    const movable = this.#movableAt(event.target);
    if (movable === undefined || event.button !== 0) return;
    const start = { x: event.clientX, y: event.clientY };
    let place: Place | undefined;
    const move = (moved: PointerEvent): void => {
      const [dx, dy] = [moved.clientX - start.x, moved.clientY - start.y];
      if (place === undefined && Math.hypot(dx, dy) < slackPx) return;
      if (movable.held !== '') {
        this.#hooks.say(movable.held);
        return;
      }
      this.#root.setPointerCapture(event.pointerId);
      place = this.#snapped(movable, dx, dy);
      this.#shift(movable, place);
    };
    const end = (ended: Event): void => {
      this.#root.removeEventListener('pointermove', move);
      for (const name of ends) this.#root.removeEventListener(name, end);
      if (place === undefined) return;
      this.justMoved = true;
      setTimeout(() => {
        this.justMoved = false;
      });
      if (ended.type === 'pointerup') void this.#send(movable, place);
      else this.#shift(movable, movable);
    };
    const ends = ['pointerup', 'pointercancel'] as const;
    this.#root.addEventListener('pointermove', move);
    for (const name of ends) this.#root.addEventListener(name, end);
  }

  #snapped(movable: MovableView, dx: number, dy: number): Place {
    const { step = 1, mirrored = false } = this.#view ?? {};
    const scale = this.#fit?.scale ?? 1;
    const snap = (mm: number): number => Math.round(mm / step) * step;
    return {
      x: snap(movable.x + (dx / scale) * (mirrored ? -1 : 1)),
      y: snap(movable.y - dy / scale),
    };
  }

  /** Shows a row and what moves with it as if it stood there. */
  #shift(movable: MovableView, place: Place): void {
    const { mirrored = false } = this.#view ?? {};
    const scale = this.#fit?.scale ?? 1;
    const dx = (place.x - movable.x) * scale * (mirrored ? -1 : 1);
    const dy = -(place.y - movable.y) * scale;
    for (const group of this.#root.querySelectorAll('[data-owner]')) {
      if (group.getAttribute('data-owner') !== movable.row) continue;
      group.setAttribute('transform', `translate(${dx.toFixed(1)} ${dy.toFixed(1)})`);
    }
  }

  async #send(movable: MovableView, place: Place): Promise<void> {
    if (place.x === movable.x && place.y === movable.y) return;
    const label = this.#view?.rows[movable.row] ?? movable.row;
    const taken = await this.#hooks.move(movable.row, place);
    if (taken) this.#hooks.say(`Moved: ${label}.`);
    else this.#shift(movable, movable);
  }
}
