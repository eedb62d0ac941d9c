/** The booklet in English. */
import type { Words } from './catalogue.ts';

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

function listed(items: readonly string[]): string {
  const last = items.at(-1) ?? '';
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} and ${last}`;
}

export const EN: Words = {
  tag: 'en',
  voice: { point: '.', about: 'about', lessThan: 'less than', by: '×' },
  untitled: 'Untitled quilt',
  page: (number, of) => `Page ${number} of ${of}`,
  contents: 'Contents',
  listed,
  cloth: (kind, count, size) => {
    if (kind === 'fat quarter') return counted(count, kind);
    return kind === 'strip' ? `${counted(count, kind)} ${size} wide` : `${counted(count, kind)} ${size}`;
  },

  cover: {
    by: (name) => `by ${name}`,
    size: (name, measures) => (name === null ? `Finished size ${measures}` : `Size ${name}: ${measures} finished`),
    also: (sizes) => `This pattern also comes in ${sizes}.`,
    level: (level) => `Level: ${level}`,
    quilt: (title) => `The whole quilt in its fabrics: ${title}.`,
  },

  need: {
    title: 'What you need',
    intro: (width, spare) => `Amounts are for fabric with a usable width of ${width}, unless the table says otherwise. They include ${spare} to spare.`,
    table: 'Fabric and more, for every size',
    item: 'For',
    amount: 'Amount',
    finished: 'Finished size',
    blocks: 'Blocks',
    backing: (fabric) => (fabric === undefined ? 'Backing' : `Backing: ${fabric}`),
    batting: 'Batting',
    binding: (fabric) => `Binding: ${fabric} *`,
    bindingNote: '* The binding is cut from the fabric of that name. Its amount above holds it already.',
    assorted: (name, prints) => `${name}, ${counted(prints, 'print')} in all`,
    usable: (width) => `usable width ${width}`,
    package: (name) => (name === 'by the yard' ? 'by the yard' : `package: ${name}`),
    drop: (bed, mattress) => `On a ${bed} with a mattress of ${mattress}, its head at the head of the mattress:`,
    hangs: (length, where) => `${length} hangs ${where === 'sides' ? 'down at each side' : 'down at the foot'}.`,
    shows: (length, where) => `${length} of the mattress shows ${where === 'sides' ? 'at each side' : 'at the foot'}.`,
    tools: 'Tools',
    toolList: (seam, templates) => [
      'Rotary cutter, cutting mat and a long ruler',
      `Sewing machine that sews a seam of ${seam}`,
      'Iron and ironing board',
      'Thread, pins, seam ripper',
      'A pencil or chalk for drawing on fabric',
      ...(templates ? ['Card or template plastic for the printed shapes'] : []),
      'Pins or thread for basting',
    ],
  },

  start: {
    title: 'Before you start',
    fabric: 'The fabric',
    fabricLines: [
      'Wash the fabric first if it may shrink or run. Wash all of it, or none.',
      'Press it, and trim off the selvages.',
      'The grain runs with the threads. Strips are cut across the width of the fabric unless a drawing shows them upright.',
      'Edges that run slantwise to the threads are on the bias, and stretch. Handle them gently.',
    ],
    cautions: 'Take care',
    cautionLines: [
      'Close the blade of the rotary cutter every time it leaves your hand.',
      'Cut away from yourself, along a ruler with a guard for the fingers.',
      'The iron stays hot for a while after it is switched off.',
      'Let a pressed seam cool before you touch it.',
      'Keep fingers out of the way of the needle, and take out pins before they reach it.',
      'Follow the instructions of the makers of your machine, iron and cutter.',
    ],
    test: 'A test seam',
    testLines: (square, seam, pair) => [
      `Cut two squares ${square} wide from a scrap.`,
      `Sew them together with a seam of ${seam}.`,
      'Press the seam to one side.',
      `Measure across the pair. It is ${pair} long.`,
      'If it is shorter, sew the next one a thread nearer to the edge. If it is longer, sew a thread further in.',
      'Try again until it is right. Sew the whole quilt with this seam.',
    ],
    short: 'Short forms',
    shortHead: ['Short', 'Means'],
    shortRows: (seam) => [
      ['WOF', 'width of fabric, from selvage to selvage'],
      ['HST', 'half-square triangle: half of a square, cut on the diagonal'],
      ['QST', 'quarter-square triangle: a quarter of a square, cut on both diagonals'],
      ['Finished', 'as large as it is in the sewn quilt'],
      ['Seam', `${seam} wide, unless a step says otherwise`],
    ],
    sizes: (seam, roundUp) => `Every seam is ${seam} wide, unless a step says otherwise. Cut sizes include the seams, and are rounded up to ${roundUp}.`,
  },

  cutting: {
    title: 'Cutting',
    intro: 'Cut the strips first, the widest ones first. Then cut the pieces from them. The letters in the drawings are those of the tables. “2 deep” means two of them one above the other in the strip. Grey is left over.',
    buy: (amount) => `Buy ${amount}.`,
    widthAndLength: (width, length) => `Usable width ${width}; length cut ${length}.`,
    layout: (fabric) => `How ${fabric} is cut, to scale.`,
    layoutTimes: (count) => (count === 1 ? 'Cut one piece of cloth so.' : `Cut ${count} pieces of cloth so.`),
    strips: 'Strips',
    stripHead: ['Cut', 'Size', 'From each strip'],
    strip: (count) => counted(count, 'strip'),
    stripAcross: (width) => `${width} × WOF`,
    stripAlong: (width, length) => `${width} × ${length}, along the selvage`,
    each: (size) => `Usable of each: ${size}.`,
    subcut: (count, letter, stacked) => `${count} ${letter}${stacked > 1 ? ` (${stacked} deep)` : ''}`,
    pieces: 'Pieces',
    pieceHead: ['Piece', 'Cut', 'Size', 'Then', 'You have', 'For'],
    cut: (count, noun) => counted(count, noun),
    then: (method, count) => {
      switch (method) {
        case 'once on the diagonal':
        case 'twice on the diagonal':
          return `cut ${count === 1 ? 'it' : 'each'} ${method}`;
        case 'two at a time':
        case 'four at a time':
        case 'eight at a time':
          return `sew ${method}`;
        case 'strip set':
          return 'sew into strip sets';
        case 'from strips joined':
          return 'join end to end';
        case 'template':
          return 'cut by its template';
        case 'bias':
          return `cut ${count === 1 ? 'it' : 'each'} into bias strips`;
        case 'plain':
          return '';
      }
    },
    segment: (length) => `cut the sets into segments of ${length}`,
    joined: (lengths) => `cut ${lengths}`,
    joinedPart: (count, length) => `${count} of ${length}`,
    have: (count, shape) => {
      switch (shape) {
        case 'half-square triangle':
          return `${count} HST`;
        case 'quarter-square triangle':
          return `${count} QST`;
        case 'template':
          return counted(count, 'shape');
        default:
          return counted(count, shape);
      }
    },
    for: (use) => use,
    tooWide: (use, needs, fabric, width) => `${use} needs a width of ${needs}; ${fabric} has ${width}.`,
    dealt: (pieces, prints) => `${counted(pieces, 'piece')}, dealt in turn: ${prints}.`,
    print: (count, name) => `${count} of ${name}`,
    borders: 'Borders',
    borderHead: ['Border', 'Fabric', 'Finished width', 'Corners', 'Cut strips, width × length'],
    corners: { butted: 'butted', mitred: 'mitred', squares: 'corner squares', pieced: 'pieced' },
    lengthwise: 'cut along the selvage',
    borderStrip: (count, size) => `${count} of ${size}`,
    backing: 'Backing',
    panels: (count, length) => `Cut ${counted(count, 'panel')} ${length} long by the width of the fabric.`,
    panelSeams: (count, way) => `Join them with ${counted(count, `${way} seam`)}.`,
    size: (measures) => `It is ${measures}.`,
    batting: 'Batting',
    package: (name) => (name === 'by the yard' ? 'No usual package is large enough: buy it by the yard.' : `A package of the size ${name} is large enough.`),
    binding: 'Binding',
    bindingStrips: (count, width, fabric) => `Cut ${counted(count, 'strip')} of ${fabric}, ${width} × WOF.`,
    bindingBias: (count, square, width, fabric) => `Cut ${counted(count, 'square')} of ${fabric}, ${square} wide, into bias strips ${width} wide.`,
    bindingLength: (length) => `Joined, they are ${length} long at least.`,
    bindingBuy: (amount) => `By itself the binding takes ${amount}.`,
    double: 'The binding is double: fold it in half along its length.',
    single: 'The binding is single.',
    sleeve: 'Hanging sleeve',
    sleeveCut: (size, fabric, strips) => `Cut it ${size} from ${fabric}${strips > 1 ? `, joined from ${strips} strips` : ''}.`,
  },

  making: {
    units: 'Units and blocks',
    intro: [
      'Right sides of the fabric lie together in every seam.',
      'Sew all units of a kind one after another, and cut them apart at the end. That is chain sewing.',
      'Press first as sewn. Then press to the side that the step names. Lift the iron, do not push it.',
      '“2 × unit 1” means two of the units of that number. Turn each as the drawing shows.',
    ],
    block: (name, measures, raw) => `${name}: ${measures} finished, ${raw} with its seams.`,
    blockAlt: (name) => `The block ${name} in its fabrics.`,
    stepAlt: (title) => `${title}: its parts drawn apart, with an arrow across each seam to the side it is pressed to.`,
    arrows: 'An arrow across a seam shows the side it is pressed to. Two arrows show a seam that is pressed open.',
    setting: 'The quilt top',
    settingAlt: (rows) => (rows === 1 ? 'The quilt in its fabrics, one row.' : `The quilt in its fabrics, its ${rows} rows numbered in the order they are joined.`),
    rows: 'The rows are numbered in the order they are joined.',
    rowsAlt: 'The parts of the quilt drawn apart, with an arrow across each seam to the side it is pressed to.',
    pressing: 'Which way to press',
    pressingHead: ['Where', 'Seam', 'Press', 'Why', 'Seams'],
    finishing: 'Finishing',
    steps: 'Steps',
  },

  pictures: {
    colouring: 'Colouring page',
    colouringNote: 'Copy this page, and try your own fabrics.',
    colouringAlt: 'The quilt as a line drawing, for colouring.',
    colours: 'Other colours',
    colourway: (name) => `In ${name}`,
    colourwayAlt: (name) => `The quilt in the colours of ${name}.`,
    valueTitle: 'Light and dark',
    values: 'In greys, each as light as its fabric',
    valuesAlt: 'The quilt in greys, each as light as its fabric.',
    back: 'At a glance',
    made: 'Written in Scant. Every number in this booklet is worked out from the text of the pattern.',
    sizes: 'Sizes',
    fabrics: 'Fabrics',
  },
};
