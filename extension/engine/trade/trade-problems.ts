import { problemMaker } from '../problems.ts';

/** Why a trade function has no answer. Values are shown with their units. */
export const tradeProblem = problemMaker({
  'argument-missing': '{function} needs {name}: {help}.',
  'argument-not-positive': '{function}: {name} is {value}; it must be more than nothing.',
  'argument-negative': '{function}: {name} is {value}; it cannot be less than nothing.',
  'argument-not-a-share':
    '{function}: {name} is {value}; it must be more than 0 % and at most 100 %.',
  'argument-not-a-count': '{function}: {name} is {value}; it must be a whole number from {least}.',
  'argument-not-a-number':
    '{function}: {name} is not a number that can be calculated with; look at its digits.',
  'tilt-out-of-range': '{function}: {name} is {value}; it must be at least 0 deg and below 90 deg.',
  'ring-low-side-under-base':
    '{function}: leaning {tilt}, the low side of this ring is {low} high at its centre depth of {depth}; a depth of at least {least} brings it above the base.',
  'ring-strip-square-corner':
    '{function}: a strip cannot be bent round the square corners of {shape}; give it a corner radius with roundrect(l, w, r).',
  'ring-strip-too-thick':
    '{function}: a strip {thickness} thick does not fit inside a bend of {radius}; use a thinner strip or a wider corner.',
  'bearing-larger-than-cutter':
    '{function}: the bearing ({bearing}) is larger than the cutter ({cutter}), so the cutter would not reach the edge; choose a bearing of at most {cutter}.',
  'bearing-none-small-enough':
    '{function}: a rebate of {offset} takes half of a {cutter} cutter or more; no bearing is that small. Choose a wider cutter.',
  'tool-bit-larger':
    '{function}: the bit ({bit}) is not smaller than {other} ({value}); choose a smaller bit.',
  'size-used-up':
    '{function}: nothing is left of {whole} after {taken} is taken off both sides; start from more than {least}.',
  'percent-out-of-range':
    '{function}: {value} of catalyst is outside 0.5 % to 4 %, where resin cures at all; write it as a percentage, such as 2 %.',
  'resin-neither-mass-nor-volume': '{function}: the resin is {value}; give a mass or a volume.',
  'amounts-unlike':
    '{function}: the total is {total}, but {name} is {value}; measure both by volume or weigh both (RESIN.VOLUME makes a volume of a mass).',
  'density-needed':
    '{function}: {name} is needed to work {basis}; fill in the density of the material.',
  'chart-empty':
    'The shop book has no chart “{chart}”; add bands with from, to and value, or write the percentage.',
  'chart-outside':
    'The chart “{chart}” has no band for {temperature}; {range}. Write the percentage, or add a band to the shop book.',
  'argument-beyond-rule':
    '{function}: {name} is {value}; the rule holds from {least} to {most}, where a shop works.',
  'glass-share-out-of-range':
    '{function}: the share of glass is {value}; it must be more than 0 % and less than 100 %.',
  'faces-out-of-range': '{function}: faces is {value}; glue is put on 1 face or on 2.',
  'ear-not-in-front':
    '{function}: the ear is {value} out of the panel; it must be in front of it, so give z more than nothing.',
  'ear-half-given': '{function}: a second ear needs x2, y2 and z2; {name} is missing.',
  'sound-in-a-null':
    '{function}: {angle} off the axis is a null of a {cone} cone at {frequency}, where no level is left; ask for an angle a little beside it.',
  'hole-saw-too-large':
    '{function}: {diameter} is above the stock series, which ends at {most}; use a circle jig.',
  'shape-not-grown':
    '{function}: {distance} from {shape} there is no single outline: nothing is left, or it falls into pieces or closes round a hole. Take a smaller distance.',
  'ring-not-plain':
    '{function}: a ring is a circle, oval, rect or roundrect, not {shape}; take the oval or roundrect that comes closest, and cut the lip to your template.',
  'repeat-outside-chart':
    '{function}: the chart knows repeats of up to 54 in together and bolts from 50 in; these are {repeat} and {width}; lay the repeats out on paper and write the length.',
  'box-below-driver':
    '{function}: a closed box only raises the Q; {qtc} is not above the driver’s own {qts}, so ask for more than {qts}.',
  'estimates-out-of-order':
    '{function}: low, likely and high are {low}, {likely} and {high}; they must not fall.',
  'margin-out-of-range':
    '{function}: the margin is {value}; it must be at least 0 % and below 100 %. A margin is a share of the price; a share of the cost is a markup.',
  'learning-too-steep':
    '{function}: at a rate of {value} of the average the next unit would take less than no time; use a rate of at least 50 %, or the model unit.',
  'cone-too-many-waves':
    '{function}: a {cone} cone is {waves} wavelengths wide at {frequency}, more than the {most} up to which a flat piston is worked out; use a lower frequency.',
  'answer-not-finite':
    '{function}: {given} cannot be calculated with, too large or too small; look at the numbers and their units.',
  'units-too-many':
    '{function}: {value} units are more than the {most} this can add up; use fewer.',
  'step-of-temperature':
    '{function}: a temperature on a scale cannot be rounded to a step; round a difference of temperatures instead.',
  'unit-of-other-dimension': 'SHOW: {value} cannot be shown in {unit}; use a unit of {dimension}.',
  'unit-not-known': 'SHOW: “{unit}” is not a unit of this job; use one such as {example}.',
});
