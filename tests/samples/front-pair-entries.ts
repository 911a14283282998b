/** One thing a person types or chooses, in order; a kit counts once and once for each answer changed. */
export type EntryStep =
  | { readonly do: 'head'; readonly key: string; readonly text: string }
  | {
      readonly do: 'kit';
      readonly kit: string;
      /** Answers that differ from what the kit offers. */
      readonly answers: Readonly<Record<string, string>>;
    }
  | {
      readonly do: 'cell';
      readonly table: string;
      readonly row: string;
      readonly column: string;
      readonly text: string;
    };

/** From a new, empty job to the front-door pair of sample-jobs. */
export const frontPairEntries: readonly EntryStep[] = [
  { do: 'head', key: 'title', text: 'Front door pair, 6 1/2 midbass and tweeter' },
  { do: 'head', key: 'client', text: 'Demo client' },
  { do: 'head', key: 'vehicle', text: 'Demo coupe' },
  { do: 'head', key: 'date', text: '2026-11-25' },
  { do: 'head', key: 'book', text: 'books/demo-shop.panelbook' },
  { do: 'head', key: 'temperature', text: '68 degF' },
  {
    do: 'kit',
    kit: 'panel',
    answers: { shape: 'roundrect(26in, 15in, 2in)', door_seal: '5/8' },
  },
  {
    do: 'kit',
    kit: 'driver_position',
    answers: {
      frame: '6 5/8',
      cutout: '5 5/8',
      depth: '2 3/4',
      magnet: '3 1/2',
      behind: '2 1/2',
      turn: '47',
      dash: '3 5/8',
      price: '149',
    },
  },
  { do: 'kit', kit: 'aim', answers: { rear: '30', up: '28', out: '24' } },
  {
    do: 'kit',
    kit: 'driver_position',
    answers: {
      id: 'twt',
      name: 'Tweeter',
      frame: '2 1/8',
      cutout: '1 3/4',
      depth: '7/8',
      magnet: '1 1/2',
      tilt: '20',
      ring: 'tube_ring',
      price: '89',
    },
  },
  { do: 'kit', kit: 'lay_up', answers: { percent: '2 %' } },
  { do: 'kit', kit: 'cover', answers: {} },
  { do: 'kit', kit: 'shop_supplies', answers: { freight: '18.50' } },
  { do: 'kit', kit: 'office', answers: { tax: '7.25 %' } },
];

/** How many entries the steps are. */
export function entryCount(steps: readonly EntryStep[]): number {
  return steps.reduce(
    (sum, step) => sum + 1 + (step.do === 'kit' ? Object.keys(step.answers).length : 0),
    0,
  );
}
