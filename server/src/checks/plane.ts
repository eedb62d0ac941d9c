/** `gap`, `overlap`, `outside`, `empty-patch`: patches that do not tile their block, decided exactly. */
import { example } from './example.ts';
import { findingsOf, type Rule } from './rule.ts';
import { areaText, count, pointText, sizeText } from './wording.ts';

const goose = (patches: string): string => example(`block Goose 4" by 2" {\n  box 2 by 1\n${patches}}\n`);
const whole = goose('  patch ink  0,1 1,0 2,1\n  patch sand 0,0 1,0 0,1\n  patch sand 1,0 2,0 2,1\n');

export const gap: Rule = {
  id: 'gap',
  severity: 'error',
  title: 'A part of the block that no patch covers',
  why: 'A gap is a hole in the quilt: there is nothing to sew the neighbours to.',
  bad: goose('  patch ink  0,1 1,0 2,1\n  patch sand 0,0 1,0 0,1\n'),
  good: whole,
  mends: ['Add the missing patch at the corners named.', 'Move the corner of a neighbour to where the gap ends.'],
  find: (context) =>
    findingsOf(context, 'gap').map(({ place, area, corners, regions }) => ({
      rule: 'gap',
      place,
      message: `no patch covers ${areaText(area, context.pattern)} of the block${regions > 1 ? ` in ${count(regions, 'place')}` : ''}${corners[0] ? `, at ${pointText(corners[0], context.pattern)}` : ''}`,
    })),
};

export const overlap: Rule = {
  id: 'overlap',
  severity: 'error',
  title: 'Two patches that share area',
  why: 'Two patches cannot be sewn side by side where one lies over the other. (A flipped corner, written `corner`, is the one patch that may lie over another.)',
  bad: goose('  patch ink  0,1 1,0 2,1\n  patch sand 0,0 1,0 0,1\n  patch sand 1,0 2,0 2,1 1/2,1\n'),
  good: whole,
  mends: ['Give the two patches the same corners along the seam they share.', 'Drop one of them where both were meant to be the same patch.'],
  find: (context) =>
    findingsOf(context, 'overlap').map(({ place, other, area, at }) => ({
      rule: 'overlap',
      place,
      message: `this patch lies over another by ${areaText(area, context.pattern)}, at ${pointText(at, context.pattern)}`,
      related: [{ place: other, message: 'the other patch' }],
    })),
};

export const outside: Rule = {
  id: 'outside',
  severity: 'error',
  title: 'A patch that leaves the block',
  why: 'What lies outside the block lies over its neighbours in the quilt, and their seams would not meet.',
  bad: goose('  patch ink  0,1 1,0 2,1\n  patch sand 0,0 1,0 0,1\n  patch sand 1,0 3,0 2,1\n'),
  good: whole,
  mends: ['Move the corner back to the edge of the box.', 'Check `box`: x runs to the right, y down.'],
  find: (context) =>
    findingsOf(context, 'outside').map(({ place, area, at, width, height }) => ({
      rule: 'outside',
      place,
      message: `this patch leaves the block of ${sizeText({ width, height }, context.pattern)} by ${areaText(area, context.pattern)}, at ${pointText(at, context.pattern)}`,
    })),
};

export const emptyPatch: Rule = {
  id: 'empty-patch',
  severity: 'error',
  title: 'A patch with no area, or one that crosses itself',
  why: 'A patch needs three corners that are not in one line, and an outline that does not cross itself; nothing else can be cut.',
  bad: goose('  patch ink  0,1 1,0 2,1\n  patch sand 0,0 1,0 0,1\n  patch sand 1,0 2,0 2,1\n  patch ink 0,0 1,0 2,0\n'),
  good: whole,
  mends: ['List the corners in order round the patch.', 'Drop the patch if its neighbours cover it.'],
  find: (context) => findingsOf(context, 'empty-patch').map(({ place, why }) => ({ rule: 'empty-patch', place, message: why })),
};
