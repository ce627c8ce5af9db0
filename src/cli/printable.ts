/** Text from presets and file names on its way to a terminal. */

/**
 * @returns the text with control characters, which could move the cursor or recolour the screen, shown as ␛-like marks
 */
export const printable = (text: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is replaced
  text.replace(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/g, (c) => {
    const code = c.charCodeAt(0);
    return code < 0x20 ? String.fromCharCode(0x2400 + code) : `\\u${code.toString(16).padStart(4, '0')}`;
  });
