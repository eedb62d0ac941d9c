/** How many patches each block has, counted on paper; and other numbers for the blocks that take some. */

export const PATCHES: Readonly<Record<string, number>> = {
  // Always there.
  four_patch: 4, nine_patch: 9, rail: 3, half_square: 2, hourglass: 4, half_and_quarters: 3, goose: 3, square_in_square: 5, snowball: 5,
  half_rectangle: 2, drunkards_path: 2,
  // Four-patches.
  double_four_patch: 2 * 4 + 2, sixteen_patch: 16, pinwheel: 8, double_pinwheel: 4 * 3, broken_dishes: 32, big_dipper: 16,
  bow_tie: 2 * 2 + 2, flock_of_geese: 2 * 8 + 2 * 2, colorado: 32,
  // Flying geese.
  flying_geese: 12, dutchmans_puzzle: 24, kansas_troubles: 4 * 13,
  // Nine-patches.
  double_nine_patch: 5 * 9 + 4, contrary_wife: 5 + 4 * 2, double_x: 3 + 6 * 2, jacobs_ladder: 5 * 4 + 4 * 2, birds_in_the_air: 10,
  double_irish_chain: 25, double_irish_chain_between: 7,
  // Frames: four half squares, four pairs of bars and a middle.
  puss_in_the_corner: 9, shoo_fly: 13, calico_puzzle: 13, churn_dash: 17, hole_in_the_barn_door: 17, monkey_wrench: 17,
  double_monkey_wrench: 17, churn_dash_split: 16 + 2, churn_dash_four_patch: 16 + 4, churn_dash_hourglass: 16 + 4,
  churn_dash_pinwheel: 16 + 8, churn_dash_star: 16 + 13, prairie_queen: 4 * 2 + 4 * 4 + 1, rolling_stone: 4 * 5 + 4 * 2 + 1,
  // Stars.
  friendship_star: 13, ohio_star: 5 + 4 * 4, variable_star: 5 + 4 * 4, sawtooth_star: 17, rising_star: 16 + 17, pinwheel_star: 16 + 12,
  sisters_choice: 17 + 8 * 2, peaky_and_spike: 3, fifty_four_forty_or_fight: 5 * 4 + 4 * 3, le_moyne_star: 8 + 4 + 4,
  kaleidoscope: 8 + 4,
  // Squares within squares.
  economy: 9, snails_trail: 4 + 4 * 4, diamond_in_rectangle: 5, storm_at_sea: 4 * 5 + 4 * 5 + 9,
  // Rails and log cabins.
  rail_fence: 4, basket_weave: 12, roman_stripe: 5, log_cabin: 13, courthouse_steps: 13, white_house_steps: 13, off_centre_log_cabin: 9,
  quarter_log_cabin: 7,
  // Pictures; a flipped corner counts for one.
  bears_paw: 45, card_trick: 4 * 2 + 4 * 3 + 4, leaf_stem: 3, maple_leaf: 4 + 4 * 2 + 3, cake_stand: 20, spool: 5 + 4 * 2,
  attic_windows: 5, flipped_goose: 3, mothers_favorite: 1 + 4 * (5 + 2 * 3),
  // Curves.
  orange_peel: 3, melon_patch: 5, robbing_peter_to_pay_paul: 20, baseball: 8, mill_wheel: 8, grandmothers_fan: 8,
};

/** Arguments added to those that must be given. */
export const NUMBERS: Readonly<Record<string, readonly string[]>> = {
  snowball: ['c: 1/4', 'c: 1/2', 'c: 1/(2 + sqrt(2))'],
  drunkards_path: ['r: 1/2', 'r: 3/4', 'r: 1'],
  bow_tie: ['k: 1/3', 'k: 3/4'],
  churn_dash: ['w: 1/2', 'w: 2', 'w: 2/3'],
  off_centre_log_cabin: ['n: 1/2', 'n: 2, w: 3'],
  leaf_stem: ['c: 3/4', 'c: 1'],
  attic_windows: ['p: 3', 'p: 5/2'],
};
