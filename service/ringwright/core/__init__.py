"""Pure calculation: no HTTP, no files, no units but its own. See README.md beside this file."""
