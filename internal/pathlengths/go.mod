module example.com/walewise/internal/pathlengths

go 1.26.0
