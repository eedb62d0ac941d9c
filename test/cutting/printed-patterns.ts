/** Whole patterns as others print them: figures only, and the same quilts in the language. Usable width 42" where the page says so. */

export interface PrintedPattern {
  readonly name: string;
  readonly text: string;
  /** `fabric: count of size how` */
  readonly cuts: readonly string[];
  /** Yards printed for each fabric; the planned length must not be more. */
  readonly yards: Readonly<Record<string, string>>;
  readonly backing?: { readonly panels: number; readonly yards: string };
  readonly binding?: number;
}

const NINE = `block Nine(x, y) {
  x y x
  y x y
  x y x
}`;

export const PRINTED_PATTERNS: readonly PrintedPattern[] = [
  {
    // All People Quilt (Meredith), A. Moscicki, 2016, https://www.allpeoplequilt.com/quilt-patterns/quilt-throws/serendipity
    // 63 by 81: 32 nine-patches and 31 hourglasses of 9". Backing is cut for 69 by 87 (its batting).
    name: 'Serendipity',
    text: `fabric light #f0f0e0 "light" width 42"
fabric dark #405070 "medium and dark" width 42"
fabric green #507050 "green" width 40"
block NinePatch 9" {
  dark light dark
  light dark light
  dark light dark
}
block Hourglass 9" {
  (dark\\dark)/(dark\\dark)
}
quilt {
  straight 7 by 9
  place {
    NinePatch Hourglass
    Hourglass NinePatch
  }
  backing light overhang 3"
  batting overhang 3"
  binding cut 2 1/2" green
}`,
    cuts: ['light: 128 of 3 1/2', 'dark: 160 of 3 1/2', 'dark: 31 of 10 1/4 twice on the diagonal', 'green: 8 of 2 1/2 x 40 from strips joined'],
    yards: { light: '1 1/3', dark: '4 1/4', green: '2/3' },
    backing: { panels: 2, yards: '4 7/8' },
    binding: 8,
  },
  {
    // All People Quilt (Meredith), J. Abeloe Mead, 2014, https://www.allpeoplequilt.com/quilt-patterns/bed-quilts/orchard-lane
    // 72 1/2 by 88 1/2 with the outer seam: 9 by 11 blocks of 8", 50 pieced and 49 plain. Backing and batting are 79 by 95 there.
    name: 'Orchard Lane',
    text: `fabric yellow #f0d060 "yellow" width 42"
fabric prints #805050 "red and green prints" width 42"
fabric red #a02020 "red" width 40"
block Four 8" {
  prints prints
  prints prints
}
quilt {
  straight 9 by 11
  place {
    Four yellow
    yellow Four
  }
  backing yellow overhang 3 1/2"
  binding cut 2 1/2" red
}`,
    cuts: ['yellow: 49 of 8 1/2', 'prints: 200 of 4 1/2', 'red: 9 of 2 1/2 x 40 from strips joined'],
    yards: { yellow: '3 1/4', red: '3/4' },
    backing: { panels: 2, yards: '5 3/8' },
    binding: 9,
  },
  {
    // Karen Says Sew, 15 Aug 2010, http://karensayssew.blogspot.com/2010/08/nine-patch-with-setting-blocks.html
    // 66 by 90: 83 nine-patches and 82 plain squares of 6"; 14 strips of 6 1/2 give the 82.
    name: 'Nine patch with setting blocks',
    text: `fabric alternate #d0c0a0 "alternate" width 42"
fabric dark #404040 "dark" width 42"
${NINE}
block Patch 6" {
  Nine(dark, alternate)
}
quilt {
  straight 11 by 15
  place {
    Patch alternate
    alternate Patch
  }
  backing dark overhang 4"
}`,
    cuts: ['alternate: 82 of 6 1/2', 'alternate: 332 of 2 1/2', 'dark: 415 of 2 1/2'],
    yards: {},
    backing: { panels: 2, yards: '5 1/2' },
  },
  {
    // American Patchwork & Quilting, April 2020, p. 38 (https://issuhub.com/view/index/20757?pageIndex=38)
    name: 'Sashed in pink',
    text: `fabric pink #f0a0b0 "pink" width 42"
fabric white #ffffff "white" width 42"
block Plain 10" {
  white
}
quilt {
  straight 6 by 6
  place { Plain }
  sashing 2 1/2" pink cornerstones white outer
}`,
    cuts: ['pink: 84 of 3 x 10 1/2', 'white: 49 of 3', 'white: 36 of 10 1/2'],
    yards: {},
  },
  {
    // Village quilt class, https://oldmvc.villageserver.com/4Bs_Oct.html: centre 32 1/2 by 44 raw; borders cut 1 1/2, 2 1/2, and (the fourth) 4 1/2 with squares.
    name: 'Sampler borders',
    text: `fabric a #808080 "a" width 60"
block Centre 32" by 43 1/2" {
  a
}
quilt {
  straight 1 by 1
  place { Centre }
  border 1" a
  border 2" a
  border cut 4 1/2" a corners squares a
}`,
    cuts: [
      'a: 1 of 32 1/2 x 44',
      'a: 2 of 1 1/2 x 44',
      'a: 2 of 1 1/2 x 34 1/2',
      'a: 2 of 2 1/2 x 46',
      'a: 2 of 2 1/2 x 38 1/2',
      'a: 2 of 4 1/2 x 50',
      'a: 2 of 4 1/2 x 38 1/2',
      'a: 4 of 4 1/2',
    ],
    yards: {},
  },
];
