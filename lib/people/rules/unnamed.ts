/** True for the first owner while they still go by the name that the program gave them (lib/people/first-owner.ts). */
export function isUnnamed(person: { name: string; initials: string }): boolean {
  return person.name === 'Owner' && person.initials === 'OW';
}
