import type { HeavyQuestion } from '../formula/catalogue.ts';
import type { SkinQuestion, SkinReply } from './skin-answer.ts';
import { settleSkin } from './settle.ts';

/** Triangles of a plan: doors come within 0.1 % with so many, in about 0.1 s. */
const triangles = 2000;

/**
 * Works out what a heavy question asks. The same question has the same answer on every machine; a skin
 * that does not come to rest, or cannot be meshed, is answered without figures.
 */
export function workedOut(question: HeavyQuestion): SkinReply {
  const { panel } = question.body as SkinQuestion;
  try {
    const { figures, rest, flat } = settleSkin(panel, { triangles });
    if (!rest.settled) return {};
    return {
      figures,
      picture: {
        points: Float32Array.from(rest.mesh.points),
        heights: Float32Array.from(rest.heights),
        triangles: rest.mesh.triangles,
        regions: rest.mesh.regions,
        stretch: Float32Array.from(flat?.larger ?? []),
      },
    };
  } catch {
    // The mesher refuses edges that cross; a panel whose faults were looked for has none, to within the
    // last digits of two outlines that touch.
    return {};
  }
}
