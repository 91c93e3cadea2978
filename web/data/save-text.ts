/** Offers text as a file to keep. */
export function saveText(name: string, type: string, text: string): void {
  saveBlob(name, new Blob([text], { type }));
}

/** Offers a file to keep. */
export function saveBlob(name: string, blob: Blob): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** Today as `YYYY-MM-DD` in the reader's own time, for exports. */
export function today(): string {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
