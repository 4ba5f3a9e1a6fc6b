/** The title of a page whose form was refused begins with "Error: ", so that it is the first thing read out. */
export function errorTitle(title: string, isRefused: boolean): string {
  const bare = title.replace(/^Error: /, '');
  return isRefused ? `Error: ${bare}` : bare;
}
