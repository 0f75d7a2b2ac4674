"""What things are made of and how they behave: metals, steam, fits."""
