import { drawingSvg, type SkinReply, type Snapshot } from '../engine/index.ts';
import type { Answers, FromWebview, Question } from '../protocol/messages.ts';
import { rowAt } from './addresses.ts';
import { asksPreview, asksView } from './asks.ts';
import { choicesFor } from './choices.ts';
import { conflictAnswer, isOfConflicts, type OfConflicts } from './merging/conflicts.ts';
import type { DeskPanel } from './desk-panel.ts';
import type { JobDesk } from './job-desk.ts';
import { driversInSlices, optionsInSlices } from './in-slices.ts';
import { kitPreview, kitView } from './kits.ts';
import { actualsView } from './views/actuals-view.ts';
import { cardView } from './views/card-view.ts';
import { cutOthers, cutView } from './views/cut-view.ts';
import {
  foundSkin,
  panelView,
  wished,
  wishedDrawing,
  wishedSkin,
  type SkinFound,
  type Wished,
} from './views/panel-view.ts';
import { driversView } from './views/drivers-view.ts';
import { mixView } from './views/mix-view.ts';
import { optionsView } from './views/options-view.ts';
import { hoursView, priceView } from './views/price-view.ts';
import { scheduleView } from './views/schedule-view.ts';
import { traceView, writeTrace } from './trace.ts';
import { completionView } from './views/completion-view.ts';
import { whereFromCell, whereFromLine } from './views/where-from-view.ts';

type Asked = FromWebview & { readonly type: 'ask' };
type Answer = Answers[keyof Answers];

type Traces = Extract<Question, { ask: 'write-trace' }>;

type Pictures = Extract<Question, { ask: 'panel' | 'panel-svg' }>;

async function pictured({ ask, wish }: Pictures, desk: JobDesk): Promise<Answer> {
  const found = wished(wish, desk.snapshot());
  const skin = await skinOf(found, desk);
  if (ask === 'panel') return panelView(found, skin, desk.lock()?.message ?? '');
  const drawing = wishedDrawing(found, skin.skin);
  return drawing === undefined ? '' : drawingSvg(drawing);
}

/** The skin that a picture shows, worked out beside the typing where it is not known yet. */
async function skinOf(found: Wished, desk: JobDesk): Promise<SkinFound> {
  const asked = wishedSkin(found);
  if (asked?.state !== 'question') return { skin: undefined, message: asked?.message ?? '' };
  // The job may have asked the same for its figures.
  const known = found.snapshot.replied(asked.question);
  const reply = known ?? (await desk.settledAnswer(asked.question));
  return foundSkin(found, reply as SkinReply | undefined);
}

type Forms = Extract<Question, { ask: 'kit' | 'kit-preview' | 'asks' | 'asks-preview' }>;

function isForm(question: Question): question is Forms {
  return ['kit', 'kit-preview', 'asks', 'asks-preview'].includes(question.ask);
}

/** What the forms of kits and templates ask. */
function formAnswer(question: Forms, desk: JobDesk): Answer {
  const snapshot = desk.snapshot();
  switch (question.ask) {
    case 'kit':
      return kitView(question.kit, question.row, snapshot);
    case 'kit-preview':
      return kitPreview(question.kit, question.answers, snapshot);
    case 'asks':
      return asksView(snapshot);
    case 'asks-preview':
      return asksPreview(question.answers, snapshot, desk.whatIf);
  }
}

type Tries = Extract<Question, { ask: 'cost-drivers' | 'options' }>;

function isTrial(question: Question): question is Tries {
  return question.ask === 'cost-drivers' || question.ask === 'options';
}

/** What is worked out by trying the job, in slices between which typing is taken. */
async function tried({ ask }: Tries, desk: JobDesk): Promise<Answer> {
  if (ask === 'options') {
    const compared = await optionsInSlices(desk);
    return optionsView(compared, desk.snapshot());
  }
  const found = await driversInSlices(desk);
  return driversView(found, desk.snapshot());
}

type Plans = Extract<Question, { ask: 'price' | 'mix' | 'schedule' | 'actuals' }>;

function isPlan(question: Question): question is Plans {
  return ['price', 'mix', 'schedule', 'actuals'].includes(question.ask);
}

/** What the panes beside the grid show of the job as it stands. */
function planned({ ask }: Plans, desk: JobDesk): Answer {
  const snapshot = desk.snapshot();
  switch (ask) {
    case 'price':
      return { price: priceView(snapshot, desk.baseline), hours: hoursView(snapshot) };
    case 'mix':
      return mixView(snapshot);
    case 'schedule':
      return scheduleView(snapshot);
    case 'actuals':
      return actualsView(desk.context());
  }
}

function answered(
  question: Exclude<
    Question,
    { ask: 'edit' } | Tries | Plans | Traces | Pictures | Forms | OfConflicts
  >,
  desk: JobDesk,
): Answer {
  const snapshot: Snapshot = desk.snapshot();
  switch (question.ask) {
    case 'card': {
      const row = rowAt(question.row, snapshot);
      return row === undefined ? undefined : cardView(row, desk.context(), desk.pinned());
    }
    case 'choices':
      return choicesFor(question.cell, snapshot);
    case 'complete':
      return completionView(question, snapshot);
    case 'cut':
      return cutView(question.wish, snapshot);
    case 'cut-others':
      return cutOthers(question.wish, snapshot);
    case 'where-from':
      return whereFromLine(question.line, snapshot);
    case 'where-from-cell':
      return whereFromCell(question.cell, snapshot);
    case 'trace':
      return traceView(question.wish, snapshot.settings);
  }
}

/** Answers a panel's question; every question gets exactly one reply. */
export async function answer(desk: JobDesk, panel: DeskPanel, message: Asked): Promise<void> {
  const { request, question } = message;
  if (question.ask === 'edit') {
    const reply = await desk.edit(panel, request, question.edits);
    panel.post({ type: 'reply', request, answer: reply });
    return;
  }
  if (question.ask === 'write-trace') {
    const reply = await writeTrace(question, desk, { panel, request });
    panel.post({ type: 'reply', request, answer: reply });
    return;
  }
  if (isTrial(question)) {
    panel.post({ type: 'reply', request, answer: await tried(question, desk) });
    return;
  }
  if (isOfConflicts(question)) {
    panel.post({ type: 'reply', request, answer: await conflictAnswer(question, desk.document) });
    return;
  }
  if (isForm(question)) {
    panel.post({ type: 'reply', request, answer: formAnswer(question, desk) });
    return;
  }
  if (isPlan(question)) {
    panel.post({ type: 'reply', request, answer: planned(question, desk) });
    return;
  }
  const given =
    question.ask === 'panel' || question.ask === 'panel-svg'
      ? await pictured(question, desk)
      : answered(question, desk);
  panel.post({ type: 'reply', request, answer: given });
}
