import { problemMaker } from '../../problems.ts';

/** What each trap of the trade says; codes are permanent. */
export const trapTexts = {
  'skin-not-settled':
    '{row}: the stretched skin does not come to rest on its mesh, so its figures are those of the formula. Move rings that nearly touch each other or the edge further apart.',
  'skin-hugs-wall':
    '{row}: the cloth does not stand free but lies against the wall of {ring} along {along}. Glue or staple it there, and wet it through; a wider or shallower ring would let it stand free.',
  'skin-bears-on-wall':
    '{row}: the cloth bears on {ring} under its lip. Round what it bears on, and seal foam before resin comes near it.',
  'skin-over-stretch':
    '{row}: this shape stretches some of the cloth {needed} further than the rest; {material} gives {gives}. Use a cloth that stretches more, a shallower ring, or sew a dart.',
  'skin-needs-dart':
    '{row}: this shape asks {needed} of stretch both ways; {material} gives {gives}. It will need heat, a dart or a seam there.',
  'ounce-by-weight':
    '{row}: {column} says {amount}. A bare oz is a weight, {volume} of {material}. Measured in a cup, write {floz}; weighed, write it in g or lb so that nobody reads fluid ounces.',
  'glass-by-yard':
    '{material} weighs {weight} by the square yard, {metric}. Mat is sold by the square foot, nine times that: if it is mat, write {other}.',
  'glass-by-foot':
    '{material} weighs {weight} by the square foot, {metric}. Cloth is sold by the square yard, a ninth of that: if it is cloth, write {other}.',
  'glass-too-light':
    '{row}: {material} at {metric} is lighter than any mat; the lightest, 3/4 oz a square foot, has 229 g/m². Mend its weight: oz by the square yard is a ninth of oz by the square foot.',
  'glass-unit-in-formula':
    '{row}: {column} reckons with {weight}. Mat is sold by the square foot (0.75 to 3 oz/sqft), cloth by the square yard (4 oz/sqyd and up); the wrong one is nine times out. Write {other}, or the weight in g/m2.',
  'mix-basis-differs':
    '{row}: {column} takes the percent {written}, but the shop’s book says {basis}. The two differ by {share} for these densities. Write book.mix_basis, or change that constant.',
  'mix-by-mass-or-volume':
    '{row}: for {resin} with {catalyst} a percent by volume is {share} {direction} than one by mass. This job takes it {basis}; read on the label which it means.',
  'drop-not-calibrated':
    '{row}: {column} counts in drops of {drop}, which nobody measured here. Count how many drops fill 2 ml with the bottle in use and put 2 ml over that number in the book’s catalyst_drop.',
  'glue-one-face':
    '{row}: {column} spreads {material} on one face. Contact cement goes on both: write 2 for the faces, or half of the bond has none.',
  'glue-coated-area':
    '{row}: {column} divides by a coverage, which counts coated area. Where both faces are coated the bonded area is half: 100 sq ft of coverage bond 50. Write GLUE.NEED(area, 2, …).',
  'share-bare':
    '{row}: {column} {text} counts as {whole}. Write {meant} if that is meant, or {whole} if it is really that much.',
  'markup-or-margin':
    '{row}: a markup of {markup} leaves a margin of {margin}. If {markup} is the margin that is meant, the markup is {other}.',
  'margin-or-markup':
    '{row}: a margin of {margin} is a markup of {markup}. If {margin} is the markup that is meant, the margin is {other}.',
  'margin-whole':
    '{row}: a margin of {margin} would leave nothing for the cost. A margin is below 100 %; a markup may be more.',
  'cutout-not-below-frame':
    '{row}: its cut-out of {cutout} is not smaller than its frame of {frame}, so it would fall through. Measure both again.',
  'driver-size-nominal':
    '{row}: its cut-out of {cutout} is the nominal size in its name. Nominal sizes are classes, not dimensions: drivers sold as 6 1/2 in drop into 4.88 to 5.78 in. Measure the driver in hand.',
  'driver-not-measured':
    '{row}: its sizes are {sure}, not measured. Measure the driver in hand before anything is cut, then say measured.',
  'ring-build-unfit':
    '{row}: built as {build} at {tilt} its lip is oval, {lip}, and a round baffle does not fit it. For a round baffle build it as round_baffle: the strip is then {strip} {direction}.',
  'ring-build-wall':
    '{row}: built as {build} at {tilt} its wall leans with the baffle. With an upright wall (round_baffle) the strip is {strip} {direction}.',
  'ring-seam-corner':
    '{row}: its seam, {seam} from straight up, falls in a corner of {shape}, where the lap would have to bend most. Set it on a straight side, {side} for one, or leave it blank for the high side.',
  'tube-build-unfit':
    '{row}: a tube stays round, so its slanting lip is oval; build round_baffle reckons a rise of {wrong} where it is {right}. Take round_tube.',
  'baffle-round-in-oval':
    '{row}: a round baffle does not fit the slanting mouth of {ring}, which is {mouth}. Leave its outline blank, or make it that oval.',
  'board-nominal':
    '{row}: {written} is a nominal thickness; {material} measures {real} in the book. Leave the thickness blank to take that.',
  'board-name-differs':
    '{material} is called {named} and has a thickness of {written}, {apart} apart. Boards sold by metric name are thinner than the fraction: measure one and write that.',
  'plywood-nominal':
    '{material} has the nominal thickness {written}. Plywood is sold thinner, most often by 1/32 in: measure one and write that.',
  'area-not-blank':
    '{row}: {area} of {material} is an area, but it is bought {way}. {area} is {length} of it only if the pieces leave nothing over: give the length and width of the blank, or the amount to buy.',
  'hollow-too-tight':
    '{row}: its outline turns inwards with {radius} at {at}; a flush bit of {bit} with its bearing leaves {left} there. Ease the hollow, rout it with a smaller bit, or finish it with a file.',
} as const;

export type TrapCode = keyof typeof trapTexts;

/** Makes the problem of a trap. */
export const trapProblem = problemMaker<TrapCode>(trapTexts);
