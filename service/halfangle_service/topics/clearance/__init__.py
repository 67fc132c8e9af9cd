"""Whether wheel, flange and guard clear everything on a tilted plate."""
