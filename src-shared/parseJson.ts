/**
 * What a text of JSON says; undefined, which no JSON says, where it is damaged.
 * @example parseJson("[1, 2") // => undefined
 */
export const parseJson = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) {
      return undefined;
    }
    throw error;
  }
};
