"""Parts of a vine and pictures of it for one purpose: from near, as small as a stamp."""
