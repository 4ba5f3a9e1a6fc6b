import type { APIRequestContext, Page } from '@playwright/test';
import { renewedLink } from './case';

/**
 * Fills the places of world/pages.ts that name a stage, as the owner of the demonstration would find them:
 * '/job/{link:booked}', '/workshop/jobs/{job:claim}'. Other places stay as they are.
 */
export async function fillStages(owner: Page, address: string): Promise<string> {
  let filled = address;
  for (const [whole, kind, stage = ''] of address.matchAll(/\{(job|link):([\w-]+)\}/g)) {
    const job = await newestJob(owner.request, stage);
    filled = filled.replace(whole, kind === 'link' ? await renewedLink(owner, job) : job);
  }
  return filled;
}

async function newestJob(request: APIRequestContext, stage: string): Promise<string> {
  const isClaim = stage === 'claim';
  const list = isClaim ? await newestClaim(request) : `/workshop/jobs?stage=${stage}`;
  const html = await (await request.get(list)).text();
  const number = /\/workshop\/jobs\/(J\w{8})/.exec(html)?.[1];
  if (!number) throw new Error(`the demonstration has no job at ${stage}`);
  return number;
}

async function newestClaim(request: APIRequestContext): Promise<string> {
  const html = await (await request.get('/workshop/claims?show=to-rule')).text();
  return /\/workshop\/claims\/C\w{8}/.exec(html)?.[0] ?? '';
}
