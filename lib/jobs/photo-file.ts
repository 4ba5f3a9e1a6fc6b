import { db } from '@/lib/db/client';

/** Where the two sizes of a photo are kept, or null for an id nobody knows. */
export function photoFile(id: string): Promise<{ fileKey: string; thumbKey: string } | null> {
  return db.photo.findUnique({ where: { id }, select: { fileKey: true, thumbKey: true } });
}
