/** The booklet in German. */
import type { Words } from './catalogue.ts';

function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}

function listed(items: readonly string[]): string {
  const last = items.at(-1) ?? '';
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} und ${last}`;
}

const BEDS: Readonly<Record<string, string>> = {
  crib: 'Kinderbett', craft: 'Handarbeit', throw: 'Decke', twin: 'Einzelbett', full: 'Doppelbett', double: 'Doppelbett', queen: 'großes Doppelbett', king: 'sehr großes Doppelbett',
};

const USES: Readonly<Record<string, string>> = { setting: 'Anordnung', sashing: 'Zwischenstreifen', binding: 'Einfassung', sleeve: 'Aufhängetunnel', edges: 'Randdreiecke', corners: 'Eckdreiecke', backing: 'Rückseite' };

export const DE: Words = {
  tag: 'de',
  voice: { point: ',', about: 'etwa', lessThan: 'weniger als', by: '×' },
  untitled: 'Quilt ohne Titel',
  page: (number, of) => `Seite ${number} von ${of}`,
  contents: 'Inhalt',
  listed,
  cloth: (kind, count, size) => {
    switch (kind) {
      case 'fat quarter':
        return counted(count, 'Fat Quarter', 'Fat Quarters');
      case 'strip':
        return `${counted(count, 'Streifen', 'Streifen')}, ${size} breit`;
      case 'square':
        return `${counted(count, 'Quadrat', 'Quadrate')} ${size}`;
      case 'piece':
        return `${counted(count, 'Stück', 'Stücke')} ${size}`;
    }
  },

  cover: {
    by: (name) => `von ${name}`,
    size: (name, measures) => (name === null ? `Fertige Größe ${measures}` : `Größe ${name}: fertig ${measures}`),
    also: (sizes) => `Diese Anleitung gibt es auch in ${sizes}.`,
    level: (level) => `Für: ${level}`,
    quilt: (title) => `Der ganze Quilt in seinen Stoffen: ${title}.`,
  },

  need: {
    title: 'Was du brauchst',
    intro: (width, spare) => `Die Mengen gelten für Stoff mit einer nutzbaren Breite von ${width}, wo die Tabelle nichts anderes sagt. Sie enthalten ${spare} Reserve.`,
    table: 'Stoff und mehr, für jede Größe',
    item: 'Für',
    amount: 'Menge',
    finished: 'Fertige Größe',
    blocks: 'Blöcke',
    backing: (fabric) => (fabric === undefined ? 'Rückseite' : `Rückseite: ${fabric}`),
    batting: 'Vlies',
    binding: (fabric) => `Einfassung: ${fabric} *`,
    bindingNote: '* Die Einfassung wird aus dem Stoff dieses Namens geschnitten. Dessen Menge enthält sie schon.',
    assorted: (name, prints) => `${name}, ${counted(prints, 'Stoff', 'Stoffe')} zusammen`,
    usable: (width) => `nutzbare Breite ${width}`,
    package: (name) => (name === 'by the yard' ? 'vom Ballen' : `Packung: ${BEDS[name] ?? name}`),
    drop: (bed, mattress) => `Auf einem Bett (${bed}) mit einer Matratze von ${mattress}, das obere Ende am Kopf der Matratze:`,
    hangs: (length, where) => `${length} hängen ${where === 'sides' ? 'an jeder Seite' : 'am Fuß'} herab.`,
    shows: (length, where) => `${length} der Matratze bleiben ${where === 'sides' ? 'an jeder Seite' : 'am Fuß'} frei.`,
    tools: 'Werkzeug',
    toolList: (seam, templates) => [
      'Rollschneider, Schneidematte und langes Lineal',
      `Nähmaschine, die eine Naht von ${seam} näht`,
      'Bügeleisen und Bügelbrett',
      'Garn, Stecknadeln, Nahttrenner',
      'Stift oder Kreide zum Zeichnen auf Stoff',
      ...(templates ? ['Karton oder Schablonenfolie für die gedruckten Formen'] : []),
      'Nadeln oder Garn zum Heften',
    ],
  },

  start: {
    title: 'Bevor du anfängst',
    fabric: 'Der Stoff',
    fabricLines: [
      'Wasche den Stoff zuerst, wenn er einlaufen oder ausfärben kann. Wasche allen oder keinen.',
      'Bügle ihn, und schneide die Webkanten ab.',
      'Der Fadenlauf folgt den Fäden. Streifen werden quer über die Stoffbreite geschnitten, wo keine Zeichnung sie aufrecht zeigt.',
      'Kanten schräg zu den Fäden dehnen sich. Behandle sie sanft.',
    ],
    cautions: 'Gib acht',
    cautionLines: [
      'Schließe die Klinge des Rollschneiders jedes Mal, wenn du ihn aus der Hand legst.',
      'Schneide von dir weg, an einem Lineal mit Fingerschutz.',
      'Das Bügeleisen bleibt nach dem Ausschalten noch eine Weile heiß.',
      'Lass eine gebügelte Naht abkühlen, bevor du sie anfasst.',
      'Halte die Finger von der Nadel fern, und ziehe Stecknadeln heraus, bevor sie die Nadel erreichen.',
      'Folge den Anleitungen der Hersteller von Maschine, Bügeleisen und Rollschneider.',
    ],
    test: 'Eine Probenaht',
    testLines: (square, seam, pair) => [
      `Schneide aus einem Rest zwei Quadrate, ${square} breit.`,
      `Nähe sie mit einer Naht von ${seam} zusammen.`,
      'Bügle die Naht zu einer Seite.',
      `Miss quer über das Paar. Es ist ${pair} lang.`,
      'Ist es kürzer, nähe das nächste einen Faden näher am Rand. Ist es länger, nähe einen Faden weiter innen.',
      'Versuche es, bis es stimmt. Nähe den ganzen Quilt mit dieser Naht.',
    ],
    short: 'Kurzformen',
    shortHead: ['Kurz', 'Bedeutet'],
    shortRows: (seam) => [
      ['SB', 'Stoffbreite, von Webkante zu Webkante'],
      ['HQD', 'halbes Quadrat: Dreieck aus einem Quadrat, das einmal diagonal geschnitten wird'],
      ['VQD', 'Viertelquadrat: Dreieck aus einem Quadrat, das über beide Diagonalen geschnitten wird'],
      ['Fertig', 'so groß wie im genähten Quilt'],
      ['Naht', `${seam} breit, wo ein Schritt nichts anderes sagt`],
    ],
    sizes: (seam, roundUp) => `Jede Naht ist ${seam} breit, wo ein Schritt nichts anderes sagt. Zuschnittmaße enthalten die Nähte und sind auf ${roundUp} aufgerundet.`,
  },

  cutting: {
    title: 'Zuschnitt',
    intro: 'Schneide zuerst die Streifen, die breitesten zuerst. Schneide dann die Teile daraus. Die Buchstaben in den Zeichnungen sind die der Tabellen. „2 tief“ heißt zwei davon übereinander im Streifen. Grau bleibt übrig.',
    buy: (amount) => `Kaufe ${amount}.`,
    widthAndLength: (width, length) => `Nutzbare Breite ${width}; geschnittene Länge ${length}.`,
    layout: (fabric) => `So wird ${fabric} geschnitten, im Maßstab.`,
    layoutTimes: (count) => (count === 1 ? 'Schneide ein Stück Stoff so.' : `Schneide ${count} Stücke Stoff so.`),
    strips: 'Streifen',
    stripHead: ['Schneide', 'Maß', 'Aus jedem Streifen'],
    strip: (count) => counted(count, 'Streifen', 'Streifen'),
    stripAcross: (width) => `${width} × SB`,
    stripAlong: (width, length) => `${width} × ${length}, entlang der Webkante`,
    each: (size) => `Nutzbar von jedem: ${size}.`,
    subcut: (count, letter, stacked) => `${count} ${letter}${stacked > 1 ? ` (${stacked} tief)` : ''}`,
    pieces: 'Teile',
    pieceHead: ['Teil', 'Schneide', 'Maß', 'Dann', 'Ergibt', 'Für'],
    cut: (count, noun) => {
      const [one, many] = { square: ['Quadrat', 'Quadrate'], rectangle: ['Rechteck', 'Rechtecke'], strip: ['Streifen', 'Streifen'] }[noun];
      return counted(count, one ?? noun, many ?? noun);
    },
    then: (method, count) => {
      const it = count === 1 ? 'es' : 'jedes';
      switch (method) {
        case 'once on the diagonal':
          return `${it} einmal diagonal schneiden`;
        case 'twice on the diagonal':
          return `${it} zweimal diagonal schneiden`;
        case 'two at a time':
          return 'je zwei auf einmal nähen';
        case 'four at a time':
          return 'je vier auf einmal nähen';
        case 'eight at a time':
          return 'je acht auf einmal nähen';
        case 'strip set':
          return 'zu Streifensätzen nähen';
        case 'from strips joined':
          return 'der Länge nach verbinden';
        case 'template':
          return 'nach der Schablone schneiden';
        case 'bias':
          return `${it} in Schrägstreifen schneiden`;
        case 'plain':
          return '';
      }
    },
    segment: (length) => `die Sätze in Abschnitte von ${length} schneiden`,
    joined: (lengths) => `davon ${lengths}`,
    joinedPart: (count, length) => `${count} von ${length}`,
    have: (count, shape) => {
      switch (shape) {
        case 'square':
          return counted(count, 'Quadrat', 'Quadrate');
        case 'rectangle':
          return counted(count, 'Rechteck', 'Rechtecke');
        case 'half-square triangle':
          return `${count} HQD`;
        case 'quarter-square triangle':
          return `${count} VQD`;
        case 'side setting triangle':
          return counted(count, 'Seitendreieck', 'Seitendreiecke');
        case 'corner setting triangle':
          return counted(count, 'Eckdreieck', 'Eckdreiecke');
        case 'strip':
          return `${count} Streifen`;
        case 'template':
          return counted(count, 'Form', 'Formen');
      }
    },
    for: (use) => USES[use] ?? use.replace(/^border (\d+)$/, 'Rand $1'),
    tooWide: (use, needs, fabric, width) => `${USES[use] ?? use} braucht eine Breite von ${needs}; ${fabric} hat ${width}.`,
    dealt: (pieces, prints) => `${counted(pieces, 'Teil', 'Teile')}, reihum verteilt: ${prints}.`,
    print: (count, name) => `${count} aus ${name}`,
    borders: 'Ränder',
    borderHead: ['Rand', 'Stoff', 'Fertige Breite', 'Ecken', 'Streifen schneiden, Breite × Länge'],
    corners: { butted: 'stumpf', mitred: 'auf Gehrung', squares: 'Eckquadrate', pieced: 'zusammengesetzt' },
    lengthwise: 'entlang der Webkante geschnitten',
    borderStrip: (count, size) => `${count} von ${size}`,
    backing: 'Rückseite',
    panels: (count, length) => `Schneide ${counted(count, 'Bahn', 'Bahnen')} von ${length} Länge über die Stoffbreite.`,
    panelSeams: (count, way) => `Verbinde sie mit ${count} ${way === 'vertical' ? 'senkrechten' : 'waagerechten'} ${count === 1 ? 'Naht' : 'Nähten'}.`,
    size: (measures) => `Maß: ${measures}.`,
    batting: 'Vlies',
    package: (name) => (name === 'by the yard' ? 'Keine übliche Packung ist groß genug: kaufe es vom Ballen.' : `Eine Packung der Größe ${BEDS[name] ?? name} ist groß genug.`),
    binding: 'Einfassung',
    bindingStrips: (count, width, fabric) => `Schneide ${counted(count, 'Streifen', 'Streifen')} aus ${fabric}, ${width} × SB.`,
    bindingBias: (count, square, width, fabric) => `Schneide ${counted(count, 'Quadrat', 'Quadrate')} aus ${fabric}, ${square} breit, in Schrägstreifen von ${width} Breite.`,
    bindingLength: (length) => `Verbunden sind sie mindestens ${length} lang.`,
    bindingBuy: (amount) => `Für sich braucht die Einfassung ${amount}.`,
    double: 'Die Einfassung ist doppelt: falte sie der Länge nach zur Hälfte.',
    single: 'Die Einfassung ist einfach.',
    sleeve: 'Aufhängetunnel',
    sleeveCut: (size, fabric, strips) => `Schneide ihn ${size} aus ${fabric}${strips > 1 ? `, aus ${strips} Streifen verbunden` : ''}.`,
  },

  making: {
    units: 'Einheiten und Blöcke',
    intro: [
      'In jeder Naht liegen die rechten Seiten des Stoffs aufeinander.',
      'Nähe alle gleichen Einheiten hintereinander, und schneide sie am Ende auseinander. Das ist Kettennähen.',
      'Bügle zuerst, wie genäht. Bügle dann zu der Seite, die der Schritt nennt. Hebe das Eisen, schiebe es nicht.',
      '„2 × unit 1“ heißt zwei Einheiten dieser Nummer. Drehe jede, wie die Zeichnung zeigt.',
    ],
    block: (name, measures, raw) => `${name}: fertig ${measures}, mit Nähten ${raw}.`,
    blockAlt: (name) => `Der Block ${name} in seinen Stoffen.`,
    stepAlt: (title) => `${title}: die Teile auseinandergezogen, mit einem Pfeil über jede Naht zu der Seite, zu der sie gebügelt wird.`,
    arrows: 'Ein Pfeil über einer Naht zeigt, zu welcher Seite sie gebügelt wird. Zwei Pfeile zeigen eine Naht, die auseinandergebügelt wird.',
    setting: 'Das Quilttop',
    settingAlt: (rows) => (rows === 1 ? 'Der Quilt in seinen Stoffen, eine Reihe.' : `Der Quilt in seinen Stoffen, die ${rows} Reihen in der Folge nummeriert, in der sie verbunden werden.`),
    rows: 'Die Reihen sind in der Folge nummeriert, in der sie verbunden werden.',
    rowsAlt: 'Die Teile des Quilts auseinandergezogen, mit einem Pfeil über jede Naht zu der Seite, zu der sie gebügelt wird.',
    pressing: 'Wohin gebügelt wird',
    pressingHead: ['Wo', 'Naht', 'Bügle', 'Warum', 'Nähte'],
    finishing: 'Fertigstellen',
    steps: 'Schritte',
  },

  pictures: {
    colouring: 'Ausmalseite',
    colouringNote: 'Kopiere diese Seite, und probiere deine eigenen Stoffe.',
    colouringAlt: 'Der Quilt als Strichzeichnung zum Ausmalen.',
    colours: 'Andere Farben',
    colourway: (name) => `In ${name}`,
    colourwayAlt: (name) => `Der Quilt in den Farben von ${name}.`,
    valueTitle: 'Hell und dunkel',
    values: 'In Grau, jedes so hell wie sein Stoff',
    valuesAlt: 'Der Quilt in Grautönen, jeder so hell wie sein Stoff.',
    back: 'Auf einen Blick',
    made: 'Geschrieben in Scant. Jede Zahl in diesem Heft ist aus dem Text der Anleitung berechnet.',
    sizes: 'Größen',
    fabrics: 'Stoffe',
  },
};
