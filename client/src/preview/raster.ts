/** A picture as points: the SVG that the server made, drawn on a canvas. */

/** A PNG in base 64; null when the picture could not be read or is too large for a canvas. */
export async function rasterised(svg: string, width: number, height: number): Promise<string | null> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  try {
    await image.decode();
  } catch {
    return null;
  }
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const pen = canvas.getContext('2d');
  if (!pen) return null;
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, width, height);
  pen.drawImage(image, 0, 0, width, height);
  const url = canvas.toDataURL('image/png');
  return url.startsWith('data:image/png;base64,') ? url.slice(url.indexOf(',') + 1) : null;
}
