/** What a unit is called by its model, everywhere the same: unitName({ maker: 'Tideline', name: 'HW-2' }) -> 'Tideline HW-2' */
export function unitName({ maker, name }: { maker: string; name: string }): string {
  return `${maker} ${name}`;
}
