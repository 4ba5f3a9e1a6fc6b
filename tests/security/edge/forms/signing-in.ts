import type { FormsOfFiles } from './form';

export const workshop: FormsOfFiles = [
  [
    'change-password-schema.ts',
    { changePasswordForm: { fields: { currentPassword: 'old tin kettle', newPassword: 'seven apples' } } },
  ],
  ['second-step/schema.ts', { secondStepForm: { fields: { code: '123456', goTo: '/workshop' } } }],
  [
    'sign-in/schema.ts',
    {
      signInSchema: {
        fields: { email: 'mira@example.org', password: 'seven apples', goTo: '/workshop' },
      },
    },
  ],
];
