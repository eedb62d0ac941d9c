/**
 * On-point setting triangles for finished blocks, in inches: the block's diagonal, and the squares that side triangles (cut twice)
 * and corner triangles (cut once) are cut from by the trade's rule (diagonal + 1 1/4, diagonal / 2 + 7/8) before rounding up. Computed
 * with a 60-digit root of two; rounded up to 1/8" they are the figures printed by Marcia Hohn, "How to Make Setting Triangles", 2002,
 * http://www.quilterscache.com/H/howtomakesettingtriangles.html (hohn2002), and by Christa Watson, "Quilty Math",
 * https://christaquilts.com/quilty-math/ (christa), which stand beside each row, sides first.
 */
export const SETTING_TRIANGLES: readonly { readonly finished: string; readonly diagonal: string; readonly side: string; readonly corner: string }[] = [
  { finished: '3', diagonal: '4.24264', side: '5.49264', corner: '2.99632' }, // christa 5 1/2 and 3
  { finished: '4 1/2', diagonal: '6.36396', side: '7.61396', corner: '4.05698' }, // christa 7 5/8 and 4 1/8
  { finished: '6', diagonal: '8.48528', side: '9.73528', corner: '5.11764' }, // hohn2002 9 3/4 and 5 1/8 — christa 9 3/4 and 5 1/8
  { finished: '7 1/2', diagonal: '10.60660', side: '11.85660', corner: '6.17830' }, // christa 11 7/8 and 6 1/4
  { finished: '8', diagonal: '11.31371', side: '12.56371', corner: '6.53185' }, // hohn2002 12 5/8 and 6 5/8 — christa 12 5/8 and 6 5/8
  { finished: '9', diagonal: '12.72792', side: '13.97792', corner: '7.23896' }, // hohn2002 14 and 7 1/4 — christa 14 and 7 1/4
  { finished: '10 1/2', diagonal: '14.84924', side: '16.09924', corner: '8.29962' }, // christa 16 1/8 and 8 3/8
  { finished: '12', diagonal: '16.97056', side: '18.22056', corner: '9.36028' }, // hohn2002 18 1/4 and 9 3/8 — christa 18 1/4 and 9 3/8
  { finished: '12 1/2', diagonal: '17.67767', side: '18.92767', corner: '9.71383' }, // christa 19
  { finished: '14', diagonal: '19.79899', side: '21.04899', corner: '10.77449' }, // hohn2002 21 1/8 and 10 7/8
  { finished: '18', diagonal: '25.45584', side: '26.70584', corner: '13.60292' }, // the rule
];
