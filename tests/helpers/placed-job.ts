import {
  openSession,
  picturedBases,
  picturedPanel,
  type PicturedPanel,
  type Snapshot,
} from '../../extension/engine/index.ts';

type Hand = PicturedPanel['hand'];

/** What a test of pictures changes of the job below. */
export interface PlacedJob {
  readonly build?: string;
  readonly seat?: string;
  readonly hand?: string;
  readonly shape?: string;
  readonly turn?: string;
  readonly seam?: string;
  /** Its ring does not say where it stands. */
  readonly unplaced?: boolean;
  readonly more?: string;
}

/**
 * A base of 24 in × 16 in × 1/4 in and a ring of 7 1/2 in on it, which stands 2 in above its front and
 * leans 15 deg to the rear (a clock of 90 deg), with its driver, baffle and opening.
 */
export function placedJob(job: PlacedJob = {}): string {
  const { build = 'round_baffle', seat = 'wrap', hand = 'both', turn = '90 deg' } = job;
  return `format = 1

[job]
title = "Placed"
units = "in"
currency = "USD"

[[panel]]
id = "door"
name = "Door"
hands = "pair"

[[driver]]
id = "mid"
name = "Midbass"
frame = "6 5/8 in"
cutout = "5 5/8 in"
depth = "2 3/4 in"
magnet = "3 1/2 in"

[[part]]
id = "base"
name = "Base"
kind = "base"
panel = "door"
shape = "${job.shape ?? 'roundrect(24 in, 16 in, 2 in)'}"
thickness = "1/4 in"

[[part]]
id = "ring"
name = "Ring"
kind = "ring"
on = "base"
driver = "mid"
hand = "${hand}"
size = "7 1/2 in"
depth = "2 1/4 in"
tilt = "15 deg"
turn = "${turn}"
${job.seam === undefined ? '' : `seam = "${job.seam}"\n`}${job.unplaced === true ? '' : 'at_x = "-4 in"\nat_y = "1 in"\n'}seat = "${seat}"
build = "${build}"

[[part]]
id = "baffle"
name = "Baffle"
kind = "baffle"
on = "ring"
driver = "mid"

[[part]]
id = "opening"
name = "Opening"
kind = "hole"
on = "base"
driver = "mid"
tilt = "=ring.tilt"
${job.more ?? ''}`;
}

export function placedSnapshot(job: PlacedJob = {}): Snapshot {
  return openSession(placedJob(job)).snapshot();
}

/** The first base of a job as pictures see it. */
export function placedPanel(job: PlacedJob = {}, hand: Hand = 'drawn'): PicturedPanel {
  const { workbook: answers, book, settings } = placedSnapshot(job);
  const source = { answers, book, settings };
  const base = picturedBases(source)[0];
  const panel = base && picturedPanel(base, hand, source);
  if (panel === undefined) throw new Error('The job has no base with an outline.');
  return panel;
}

/** The ring of that job. */
export function placedRing(panel: PicturedPanel): PicturedPanel['rings'][number] {
  const [ring] = panel.rings;
  if (ring === undefined) throw new Error('The base has no ring.');
  return ring;
}
