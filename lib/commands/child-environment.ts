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
    LOG_FORMAT: config.logFormat,
    // lib/serving/stop ends the process, after its open requests and its message in hand.
    NEXT_MANUAL_SIG_HANDLE: 'true',
  };
}
