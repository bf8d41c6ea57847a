import type { Metadata, Viewport } from 'next';
import { cookies } from 'next/headers';
import type { ReactNode } from 'react';
import { Footer } from './_look/footer';
import { Header } from './_look/header';
import { FollowLinks, stillAlone } from './_look/still';
import { viewerOrNull } from './_shop/enter';
import { pagesFor } from './_shop/pages-for';
import { themeFrom } from './_look/theme';
import { hear } from './_words/speech';
import { words } from './_words/words';
import { WithoutScript } from './_look/without-script';
import './_look/tokens.css';
import './_look/base.css';
import './_look/print.css';

export async function generateMetadata(): Promise<Metadata> {
  await hear();
  return {
    title: { default: 'Rehang', template: '%s · Rehang' },
    description: words('look')('description'),
  };
}

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#f4f3ef' },
    { media: '(prefers-color-scheme: dark)', color: '#14191b' },
  ],
};

export default async function Layout({ children }: { children: ReactNode }) {
  const { language } = await hear();
  const viewer = await viewerOrNull();
  const theme = themeFrom((await cookies()).get('theme')?.value);
  return (
    <html lang={language} data-theme={theme}>
      <body>
        <WithoutScript />
        {await stillAlone(<Header theme={theme} pages={pagesFor(viewer)} who={viewer?.code ?? null} />)}
        {children}
        {await stillAlone(<Footer />)}
        <FollowLinks />
      </body>
    </html>
  );
}
