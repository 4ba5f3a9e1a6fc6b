import { OwnerOnly } from '../owner-only';

export default function ForbiddenPage() {
  return <OwnerOnly page="People" />;
}
