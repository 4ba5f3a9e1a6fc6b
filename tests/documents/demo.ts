/** One of each paper, of one job of the invented workshop. */
export { certificate, certificateOf, coverLines } from './demo/certificate';
export { creditNote, invoice, receipt } from './demo/paid';
export { customs, label, labelSetting, slip } from './demo/posted';
export { form, quote } from './demo/quote';
export { setting, workshop } from './demo/shared';
