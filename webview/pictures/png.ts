/** Side of a saved picture in pixels, the longer one. */
export const savedSide = 2400;

/**
 * SVG text as PNG bytes in base64, on white. Rejects where the browser cannot draw it.
 */
export async function pngOfSvg(text: string): Promise<string> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`;
  await image.decode();
  const [width, height] = [image.naturalWidth || 1, image.naturalHeight || 1];
  const scale = savedSide / Math.max(width, height);
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(width * scale));
  canvas.height = Math.max(1, Math.round(height * scale));
  const brush = canvas.getContext('2d');
  if (brush === null) throw new Error('This browser draws no pictures.');
  brush.fillStyle = 'white';
  brush.fillRect(0, 0, canvas.width, canvas.height);
  brush.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL('image/png').replace(/^[^,]*,/, '');
}
