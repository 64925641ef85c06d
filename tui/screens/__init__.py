"""The main screen of the session and what it is made of."""
