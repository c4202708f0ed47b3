"""What runs in a reader's browser: small modules, and the scripts made of them."""
