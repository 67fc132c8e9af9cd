ROWS = ()
