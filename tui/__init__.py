"""The guided session and the command line: they draw what the model says and compute nothing of their own."""
