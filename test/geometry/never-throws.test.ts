/** Whatever is typed into a pattern, the plane answers: layouts and findings, never an exception. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { layoutBlock } from '../../server/src/geometry/block.ts';
import { layoutQuilt } from '../../server/src/geometry/quilt.ts';
import { defaultInstance } from '../../server/src/model/instantiate.ts';
import { specifyQuilt } from '../../server/src/model/quilt.ts';
import { patternOf } from './text.ts';

const ON_POINT = `fabric ink #22345c "a" directional
fabric rust #a4502e "b"
fabric sand #eadfc8 "c"
block Star 6" {
  grid 1 2 1 by 1 2 1
  ink/sand (ink|sand)-rust <
  sand ^ ink
  (ink\\sand)/rust rust Unit@90
  corner rust 1" top_left bottom_right
}
block Unit {
  box 1 by 1
  patch ink 0,0 (5/7),0 arc (5/7) 0,(5/7)
  patch sand (5/7),0 1,0 1,1 0,1 0,(5/7) arc (-5/7)
}
block Rope 3" by 2" {
  ink/sand
}
block Cabin 6" {
  centre rust 2"
  round 1" sand sand ink ink
  round 1" sand
}
block Sash {
  grid 1" by 1" rest 1"
  ink
  rust
  ink
}
block Turned 6" {
  turned 4 {
    ink/sand rust
    rust sand
  }
}
quilt {
  on_point 3 by 4
  place { Star Cabin }
  between { Turned }
  edges sand corners rust float 1"
  sashing 1" ink cornerstones rust outer
  border fit 1" rust
  border pieced { Rope Rope } corner ink meet
  border to 90" by 100" ink corners squares sand
  border top 2" sides 1" rust corners mitred
}
size a 1 by 1
size b 2 by 5 {
  edges Star
  float 0"
}
`;
const OFF_POINT = ON_POINT.replace(/ {2}between.*\n {2}edges.*\n/, '').replace(/size b[^}]*\}/, '');
const TEXTS = [
  ON_POINT,
  OFF_POINT.replace('on_point 3 by 4', 'straight 4 by 6').replace('place { Star Cabin }', 'place turned 4 {\n    Star Cabin\n    Turned (ink|rust)@90\n  }').replace('sashing 1" ink', 'sashing Sash'),
  OFF_POINT.replace('on_point 3 by 4', 'grid 6" 3" 3" by 6" 6"').replace('place { Star Cabin }', 'place {\n    Star Cabin <\n    Turned ink ^\n  }'),
  OFF_POINT.replace('on_point 3 by 4', 'rows 36"\n  row Star Cabin\n  row 2" ink\n  row Rope').replace(/ {2}place.*\n {2}sashing.*\n/, ''),
];
const BITS = ['0', '1', '-', '/', '\\', '"', ' ', '9', '(', ')', '@90', '<', '^', ' by ', ',', '{', '}', '|', '1/3', 'Star', 'ink', '*2', 'rest', '@mirror', '\n', '-1', '0"'];

interface Slip {
  readonly at: number;
  readonly cut: number;
  readonly put: string;
}
const slips = fc.array(fc.record({ at: fc.nat(4000), cut: fc.nat(3), put: fc.constantFrom('', ...BITS) }), { minLength: 1, maxLength: 3 });

test.each(TEXTS.map((text) => [/ {2}(straight|on_point|grid \S+ \S+ \S+ by|rows) .*/.exec(text.slice(text.indexOf('quilt')))?.[0] ?? '', text]))('%s', (_, text) => {
  expect(problemsOf(text)).not.toThrow();
  fc.assert(fc.property(slips, (all) => {
    expect(problemsOf(all.reduce(slipped, text))).not.toThrow();
  }), { numRuns: 60 });
});

function slipped(text: string, { at, cut, put }: Slip): string {
  const start = at % text.length;
  return text.slice(0, start) + put + text.slice(start + cut);
}

function problemsOf(text: string): () => void {
  const pattern = patternOf(text);
  return () => {
    for (const definition of pattern.blocks.values()) {
      const instance = defaultInstance(pattern, definition);
      if (instance) layoutBlock(instance);
    }
    if (pattern.quilt) for (const size of [undefined, ...pattern.sizes]) layoutQuilt(specifyQuilt(pattern, size), pattern.rules);
  };
}
