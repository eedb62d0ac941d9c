/** cutting.md in German. Shared terms are those of the booklet. */
import type { CutMethod, PieceShape } from '../../cutting/plan.ts';
import type { CuttingWords, Proof } from './cutting-words.ts';
import { DE } from './de.ts';

/** What a piece is for, in the accusative that follows „für“. */
const PARTS: Readonly<Record<string, string>> = { setting: 'die Anordnung', sashing: 'die Zwischenstreifen', binding: 'die Einfassung', sleeve: 'den Aufhängetunnel', backing: 'die Rückseite' };

const CORNERS = { butted: 'stumpfe Ecken', mitred: 'Ecken auf Gehrung', squares: 'Eckquadrate', pieced: 'zusammengesetzt' };

const CLOTHS = { 'fat quarter': ['Fat Quarter', 'Fat Quarters'], strip: ['Streifen', 'Streifen'], square: ['Quadrat', 'Quadrate'], piece: ['Stück', 'Stücke'] } as const;

const SEAMS = { vertical: ['senkrechte Naht', 'senkrechte Nähte'], horizontal: ['waagerechte Naht', 'waagerechte Nähte'] } as const;

export const CUTTING_DE: CuttingWords = {
  voice: DE.voice,
  untitled: DE.untitled,
  listed: DE.listed,
  title: (title) => `${title}: Zuschnitt`,
  cloth: DE.cloth,
  or: (amount, other) => `${amount} oder ${other}`,
  of: (count, what) => `${count} zu ${what}`,
  measure: (measures) => `Maß: ${measures}.`,

  heads: {
    sizes: 'Größen', colourways: 'Farbstellungen', blocks: 'Blöcke', before: 'Vor dem Zuschnitt', borders: 'Ränder', backing: 'Rückseite', batting: 'Vlies', binding: 'Einfassung', sleeve: 'Aufhängetunnel', tooWide: 'Zu breit', labels: 'Buchstaben',
  },
  sizeColumns: (fabrics) => ['Größe', 'fertig', 'Blöcke', ...fabrics, 'Rückseite'],
  colourColumns: (colourways) => ['Stoff', 'wie angegeben', ...colourways],
  cautions: [
    'Schließe die Klinge des Rollschneiders jedes Mal, wenn du ihn aus der Hand legst.',
    'Schneide vom Körper weg, an einem Lineal mit Fingerschutz.',
    'Folge den Anleitungen der Hersteller von Rollschneider, Matte und Lineal.',
    'Wasche den Stoff zuerst, wenn er einlaufen oder ausfärben kann, bügle ihn, und schneide die Webkanten ab.',
  ],
  table: (layers) => [
    'Falte den Stoff einmal, Webkante auf Webkante, und begradige sein Ende mit einem Schnitt; die Reserve reicht dafür.',
    `${layers === 1 ? 'Zwei Lagen liegen unter dem Rollschneider' : `${layers} gefaltete Stoffe liegen aufeinander, ${2 * layers} Lagen unter dem Rollschneider`}, und so sind die Schnitte gezählt. Öffne den Bruch für alles, was länger als die halbe Breite ist.`,
    'Schneide in der angegebenen Folge: die breitesten Streifen zuerst, und aus jedem Streifen die höchsten Teile zuerst.',
  ],
  size: (name, measures) => `${name === null ? 'Größe' : `Größe ${name}`}: fertig ${measures}, ohne die Einfassung.`,
  seams: (seam, roundUp) => `Nahtzugabe: ${seam}; Zuschnittmaße enthalten sie und sind auf ${roundUp} aufgerundet.`,
  drop: (bed, mattress, sides, foot) => `${DE.need.drop(bed, mattress)} ${sides}, ${foot}.`,
  hangs: (length, where) => DE.need.hangs(length, where).replace(/\.$/, ''),
  shows: (length, where) => DE.need.shows(length, where).replace(/\.$/, ''),
  block: (count, name, finished, raw) => `${count} ${count === 1 ? 'Block' : 'Blöcke'} ${name}: fertig ${finished}, mit Nahtzugabe ${raw}.`,
  label: (letter, fabric, cut, use) => `${letter}: ${fabric}, ${cut}, für ${use}.`,

  take: (amount) => `Nimm ${amount}.`,
  buy: DE.cutting.buy,
  usable: (width) => `Nutzbare Breite: ${width}.`,
  length: (length, proof) => `Geschnittene Länge: ${length}${proofText(proof)}.`,
  usableOfEach: (size, side) => `Nutzbar von jedem: ${size}${side === undefined ? '' : `, die ${side === 'shorter' ? 'kürzere' : 'längere'} Seite entlang der Webkante`}.`,
  needed: (count, least) => `Gebraucht: ${count}${least === undefined ? ', weniger geht nachweislich nicht' : `; kein Plan braucht weniger als ${least}`}.`,
  atHand: (count, missing) => `Vorhanden: ${count}, das sind ${missing} zu wenig.`,
  cuts: (strips, pieces) => `Schnitte: ${strips} für die Streifen, ${pieces} für die Teile.`,
  drawn: (file) => `Im Maßstab gezeichnet in ${file}.`,
  assorted: (title) => `${title} (gemischt)`,
  buyInAll: (amount, prints) => `Kaufe zusammen ${amount}, aus ${prints} ${prints === 1 ? 'Stoff' : 'Stoffen'}.`,
  dealt: DE.cutting.dealt,

  stripAcross: (count, width) => `Schneide ${count} Streifen, ${width} × Stoffbreite.`,
  stripOfCloth: (count, width, lie, length) => `Schneide ${count} Streifen, ${width} breit, ${lie === 'along' ? 'entlang der Webkante' : 'quer'}, ${length} lang.`,
  eachCloth: (kind, count) => (count === 1 ? `Ein ${CLOTHS[kind][0]}:` : `${count} ${CLOTHS[kind][1]}, aus jedem:`),
  cut: (count, noun, size) => `${DE.cutting.cut(count, noun)} ${size}`,
  use: (use, form) => (form === 'sentence' ? PARTS[use] : undefined) ?? DE.cutting.for(use),
  from: (strips, cut, purpose, stacked) => `${{ one: 'daraus', each: 'aus jedem', all: 'aus allen zusammen' }[strips]} ${cut} schneiden${purpose}${stacked === undefined ? '' : `, ${stacked} übereinander`}.`,
  stripSets: (use, segment, pieces) => `für Streifensätze für ${use}: zusammengenäht werden sie in Abschnitte von ${segment} geschnitten, zusammen ${pieces} ${pieces === 1 ? 'Teil' : 'Teile'}.`,
  purpose: (method, squares, { count, shape, each }, use) => {
    if (method === 'template') return `, eins für jede Schablone, für ${use}`;
    if (method === 'bias') return `, und daraus Schrägstreifen für die Einfassung schneiden`;
    if (each === 1) return `, für ${use}`;
    return `, ${then(method, squares)}: ${have(count, shape)} für ${use}`;
  },
  joinBinding: (strips, isPart) => {
    if (strips === 1) return isPart === 'part' ? 'mit den anderen Stoffen zur Einfassung verbinden.' : 'lang genug für die Einfassung.';
    return `der Länge nach verbinden${isPart === 'part' ? ', auch mit den anderen Stoffen,' : ''} für die Einfassung.`;
  },
  joined: (strips, lengths, use) => `${strips === 1 ? 'daraus' : 'der Länge nach verbinden und daraus'} ${lengths} schneiden, für ${use}.`,

  border: ({ number, fabric, width, corners, lengthwise, strips }) => `Rand ${number}: ${fabric}, fertig ${width} breit, ${CORNERS[corners]}${lengthwise ? ', entlang der Webkante geschnitten' : ''}: ${strips}.`,
  panels: (count, length, usable, seams) =>
    `Schneide ${count} ${count === 1 ? 'Bahn' : 'Bahnen'} von ${length} Länge über die Stoffbreite (${usable} nutzbar)${seams === 'none' ? '' : `, ${count - 1} ${SEAMS[seams][count === 2 ? 0 : 1]}`}.`,
  backingBuy: (amount, fabric) => `Kaufe ${amount}${fabric === undefined ? '' : ` von ${fabric}, zusätzlich zu dem, was oben daraus geschnitten wird`}.`,
  package: (name, size) => `${sentence(DE.need.package(name))}${size === undefined ? '' : ` (${size.replace(' by ', ` ${DE.voice.by} `)})`}.`,
  bindingLength: (length, joins) => `Länge: ${length}, der Umfang und ${joins} für Verbindungen und Ecken.`,
  bindingSquares: (count, square, width, fabric) => `Schneide ${DE.cutting.cut(count, 'square')} ${square}, daraus Schrägstreifen von ${width} Breite, aus ${fabric}.`,
  bindingStrips: (count, width, length, fabric) => `Schneide ${count} Streifen, ${width} × ${length ?? 'Stoffbreite'}, aus ${fabric}.`,
  double: 'Doppelt: falte den Streifen der Länge nach zur Hälfte.',
  single: 'Einfach.',
  bindingBuy: (amount) => `Für sich gekauft: ${amount}.`,
  sleeve: (width, height, strips, fabric) => `${width} × ${height}, aus ${strips} Streifen von ${fabric}${strips > 1 ? ', der Länge nach verbunden' : ''}.`,
  sleeveSew: 'Säume die kurzen Enden, falte ihn der Länge nach links auf links, und nähe ihn unter die obere Kante der Rückseite.',
  tooWide: (use, needs, fabric, width) => `${use}: braucht eine Breite von ${needs}, ${fabric} hat ${width}.`,
  tooLarge: (use, needs, kind, fabric, has) => `${use}: braucht ${needs}, ein ${CLOTHS[kind][0]} von ${fabric} misst ${has}.`,
};

function proofText(proof: Proof): string {
  if (proof.kind === 'least') return ', weniger geht nachweislich nicht';
  return `; kein Plan braucht weniger als ${proof.bound}${proof.buysTheSame ? ', und gekauft wird dann gleich viel' : ''}`;
}

/** What is done with the squares: the booklet writes it as a table cell, here it ends a sentence. */
function then(method: CutMethod, squares: number): string {
  return method === 'once on the diagonal' || method === 'twice on the diagonal' ? `und ${DE.cutting.then(method, squares)}` : DE.cutting.then(method, squares);
}

/** Here the short forms of the booklet are not explained. */
function have(count: number, shape: PieceShape): string {
  if (shape === 'half-square triangle') return `${count} ${count === 1 ? 'Halbquadrat-Dreieck' : 'Halbquadrat-Dreiecke'}`;
  if (shape === 'quarter-square triangle') return `${count} ${count === 1 ? 'Viertelquadrat-Dreieck' : 'Viertelquadrat-Dreiecke'}`;
  return DE.cutting.have(count, shape);
}

function sentence(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}
