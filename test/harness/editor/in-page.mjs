// Runs inside the editor's page: where on the screen is this text of an open file?

/** The middle of the first visible occurrence in an editor line, from the top, or nothing. */
globalThis.findCodeText = (text) => {
  const top = (line) => line.getBoundingClientRect().top;
  const lines = [...document.querySelectorAll('.monaco-editor .view-line')].sort((a, b) => top(a) - top(b));
  for (const line of lines) {
    const at = line.textContent.replaceAll('\u00a0', ' ').indexOf(text);
    const box = at < 0 ? null : boxOf(line, at, at + text.length);
    const middle = box && { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    if (middle && line.contains(document.elementFromPoint(middle.x, middle.y))) return middle;
  }
  return null;
};

function boxOf(line, from, to) {
  const range = document.createRange();
  range.setStart(...placeOf(line, from));
  range.setEnd(...placeOf(line, to));
  return range.getBoundingClientRect();
}

/** The text node and offset in it of an offset into the line's whole text. */
function placeOf(line, offset) {
  const walker = document.createTreeWalker(line, NodeFilter.SHOW_TEXT);
  let rest = offset;
  while (walker.nextNode()) {
    if (rest <= walker.currentNode.length) return [walker.currentNode, rest];
    rest -= walker.currentNode.length;
  }
  return [line, line.childNodes.length];
}
