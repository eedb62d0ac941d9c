/**
 * Rectangles made of squares (Bouwkamp codes, brackets left out): each next square goes into the highest free place, the leftmost of those.
 * From the catalogues of S. E. Anderson, squaring.net, by way of the test resources of github.com/skjolber/3d-bin-container-packing
 * (Apache-2.0, commit 0d7d8f1711fbcdcb245b34d6d05364a33396b368); 33 by 32 is Z. Moron's of 1925. In the last five, squares repeat.
 */
export const SQUARED_RECTANGLES: readonly { readonly name: string; readonly width: number; readonly height: number; readonly squares: readonly number[] }[] = [
  { name: '9:33x32A', width: 33, height: 32, squares: [18, 15, 7, 8, 14, 4, 10, 1, 9] },
  { name: '10:105x104A', width: 105, height: 104, squares: [60, 45, 19, 26, 44, 16, 12, 7, 33, 28] },
  { name: '11:97x96A', width: 97, height: 96, squares: [56, 41, 17, 24, 40, 14, 2, 12, 7, 31, 26] },
  { name: '11:177x176A', width: 177, height: 176, squares: [99, 78, 21, 57, 77, 43, 16, 41, 34, 9, 25] },
  { name: '11:187x166A', width: 187, height: 166, squares: [99, 88, 10, 78, 1, 9, 67, 25, 8, 17, 42] },
  { name: '11:194x183A', width: 194, height: 183, squares: [102, 92, 31, 23, 38, 81, 21, 8, 15, 60, 53] },
  { name: '11:205x181A', width: 205, height: 181, squares: [105, 100, 6, 13, 81, 76, 28, 1, 7, 20, 48] },
  { name: '11:209x168A', width: 209, height: 168, squares: [92, 64, 53, 11, 42, 44, 31, 76, 16, 73, 60] },
  { name: '12:106x99A', width: 106, height: 99, squares: [58, 48, 20, 28, 41, 17, 7, 13, 24, 5, 23, 18] },
  { name: '12:118x103A', width: 118, height: 103, squares: [60, 58, 6, 7, 45, 43, 13, 4, 9, 1, 8, 30] },
  { name: '12:162x142A', width: 162, height: 142, squares: [83, 79, 4, 12, 63, 59, 19, 9, 1, 11, 10, 40] },
  { name: '12:165x157A', width: 165, height: 157, squares: [88, 77, 13, 28, 36, 69, 17, 2, 15, 52, 8, 44] },
  { name: '12:193x129A', width: 193, height: 129, squares: [72, 52, 69, 35, 17, 26, 60, 57, 15, 42, 8, 34] },
  { name: '12:303x257A', width: 303, height: 257, squares: [154, 149, 41, 108, 103, 51, 14, 27, 1, 13, 52, 40] },
  { name: '12:308x285A', width: 308, height: 285, squares: [165, 143, 67, 76, 120, 45, 75, 28, 9, 19, 66, 47] },
  { name: '12:313x295A', width: 313, height: 295, squares: [165, 148, 52, 37, 59, 130, 35, 15, 22, 95, 7, 88] },
  { name: '12:321x272A', width: 321, height: 272, squares: [166, 155, 11, 27, 117, 106, 55, 16, 43, 51, 4, 47] },
  { name: '12:326x267A', width: 326, height: 267, squares: [166, 160, 6, 47, 107, 101, 43, 28, 15, 13, 60, 58] },
  { name: '12:334x299A', width: 334, height: 299, squares: [170, 164, 29, 135, 129, 25, 16, 9, 7, 36, 34, 70] },
  { name: '12:336x257A', width: 336, height: 257, squares: [143, 73, 120, 43, 30, 13, 17, 56, 137, 114, 29, 85] },
  { name: '12:344x289A', width: 344, height: 289, squares: [180, 164, 39, 125, 109, 48, 23, 25, 37, 61, 12, 49] },
  { name: '12:353x255A', width: 353, height: 255, squares: [129, 132, 92, 33, 59, 7, 26, 126, 3, 123, 19, 104] },
  { name: '12:368x225A', width: 368, height: 225, squares: [121, 129, 118, 11, 107, 104, 17, 9, 35, 96, 26, 61] },
  { name: '12:377x231A', width: 377, height: 231, squares: [136, 123, 118, 5, 113, 20, 108, 95, 34, 7, 27, 61] },
  { name: '12:386x277A', width: 386, height: 277, squares: [148, 108, 130, 59, 27, 22, 5, 147, 32, 129, 19, 110] },
  { name: '9:15x11A', width: 15, height: 11, squares: [6, 4, 5, 3, 1, 6, 5, 1, 4] },
  { name: '12:29x22A', width: 29, height: 22, squares: [12, 7, 10, 4, 3, 1, 12, 1, 4, 10, 3, 7] },
  { name: '12:40x36A', width: 40, height: 36, squares: [19, 10, 11, 9, 1, 12, 17, 7, 4, 3, 13, 10] },
  { name: '12:64x53A', width: 64, height: 53, squares: [33, 31, 9, 22, 20, 6, 7, 5, 1, 4, 13, 9] },
  { name: '12:84x68A', width: 84, height: 68, squares: [37, 24, 23, 6, 17, 19, 5, 11, 31, 6, 28, 25] },
];
