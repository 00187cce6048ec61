/** In the place of what could not be fetched: the page's files were changed under it, or the network went. */
export const Unfetched = () => (
  <p className="waiting" role="alert">
    This part of the page could not be fetched or drawn. Your builds are kept: load the page again to see it.
  </p>
);
