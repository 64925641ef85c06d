"""The pages of the session, one module each; imported at the first visit."""
