import { PageFrame, type PageProps } from './page-frame';
import { still, stillAlone } from './still';

/** The frame of every page, and what is in it, drawn. */
export const Page = (props: PageProps) => still(<PageFrame {...props} />);

/** A page that the browser may have to make by itself: that there is none, or none for the reader. */
export const PageAlone = (props: PageProps) => stillAlone(<PageFrame {...props} />);
