import { authSecret, config } from '@/lib/config';

/**
 * The environment of the app as a child. Next always runs it as production, where some defaults differ, so what this
 * process has settled on is handed over in full.
 */
export function childEnvironment(): NodeJS.ProcessEnv {
  return {
    ...process.env,
    NODE_ENV: 'production',
    NEXT_TELEMETRY_DISABLED: '1',
    APP_URL: config.appUrl,
    DATA_DIR: config.dataDir,
    AUTH_SECRET: authSecret(),
    DEMO: config.isDemo ? 'on' : 'off',
    // With jobs the worker ends the process after its message in hand; without them Next may end as it likes.
    ...(config.hasJobs && { NEXT_MANUAL_SIG_HANDLE: 'true' }),
  };
}
