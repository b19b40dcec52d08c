const LONG_SIDE_PX = 2048;
const QUALITY = 0.82;

/**
 * A photo small enough to wait on the tablet and cross a weak network. What the camera wrote beside it (the place above all) is not
 * copied; when it was taken is told apart.
 *
 * @throws where the file is no picture that this browser can show
 */
export async function shrinkPhoto(file: File): Promise<{ bytes: ArrayBuffer; takenAt: Date }> {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
  const scale = Math.min(1, LONG_SIDE_PX / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('This browser draws no pictures');
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY));
  if (!blob) throw new Error('This picture is too large for the browser');
  return { bytes: await blob.arrayBuffer(), takenAt: new Date(file.lastModified) };
}
