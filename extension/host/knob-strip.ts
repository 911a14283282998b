import type * as vscode from 'vscode';
import { rowKey, type Edit, type Snapshot, type WhatIf } from '../engine/index.ts';
import type { KnobView } from '../protocol/views.ts';
import { knobPlaces, knobViews, type PinStore } from './knobs.ts';

/** Pause after the last change before the effects of the knobs are worked out, in ms. */
const pause = 250;

export interface KnobStripParts {
  readonly uri: vscode.Uri;
  readonly pins: PinStore;
  readonly snapshot: () => Snapshot;
  readonly whatIf: (edits: readonly Edit[]) => WhatIf | undefined;
  /** Called when the effects are known. */
  readonly shown: (knobs: readonly KnobView[]) => void;
}

/** Knobs of one job: values at once; what a step of each does follows when there is time. */
export class KnobStrip {
  views: readonly KnobView[] = [];
  #timer: number | undefined;
  readonly #parts: KnobStripParts;

  constructor(parts: KnobStripParts) {
    this.#parts = parts;
    this.refresh();
  }

  refresh(): void {
    const { pins, uri, snapshot, whatIf, shown } = this.#parts;
    const places = knobPlaces(pins, uri, snapshot());
    this.views = knobViews(places, snapshot(), this.views);
    this.dispose();
    this.#timer = setTimeout(() => {
      this.#timer = undefined;
      this.views = knobViews(places, snapshot(), [], whatIf);
      shown(this.views);
    }, pause);
  }

  /** Pinned cells of this job, as `part/mid_ring#0/tilt`. */
  pinned(): ReadonlySet<string> {
    const { pins, uri, snapshot } = this.#parts;
    const places = knobPlaces(pins, uri, snapshot());
    return new Set(places.map((place) => `${rowKey(place)}/${place.column}`));
  }

  dispose(): void {
    if (this.#timer !== undefined) clearTimeout(this.#timer);
    this.#timer = undefined;
  }
}
